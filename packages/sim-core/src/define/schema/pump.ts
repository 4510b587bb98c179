import { choice, defaulted, fault, quantity, quantityOr } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import { faultOfCurves } from '../../physics/loop/pump-curves.ts';

const pumpSource = 'invented: a small brushless circulator';

/** Share of the current with no flow that is friction; judgement. [-] */
export const FRICTION_SHARE = 0.1;

/** Schema of the motor; what is not given follows from the rated point, see `derivedMotor`. */
const motorSchema = z.strictObject({
  ratedVoltage: quantityOr('voltage', 1, 400, 12, 'the usual partner of a 36-cell module, common practice, no source'),
  windingResistance: quantity('resistance', 0, 1000).optional(),
  frictionCurrent: quantity('current', 0, 30).optional(),
  startCurrent: quantity('current', 0, 60).optional(),
});

/** A motor that the pump's rated point allows: half the voltage and more is back-EMF, and friction leaves current for the pump. */
function checkMotor(
  pump: { motor: z.output<typeof motorSchema>; shutOffPower: number; openFlowPower: number },
  context: z.core.$RefinementCtx,
): void {
  const { ratedVoltage, windingResistance = 0, frictionCurrent, startCurrent } = pump.motor;
  const drop = (windingResistance * pump.openFlowPower) / ratedVoltage;
  if (drop > 0.5 * ratedVoltage) {
    fault(
      context,
      `${windingResistance} Ω`,
      `at most ${((0.5 * ratedVoltage ** 2) / pump.openFlowPower).toPrecision(3)} Ω, half the rated voltage at the rated current`,
      'Rated current is the open-flow power over the rated voltage; check the three.',
      ['motor', 'windingResistance'],
    );
  }
  const shutOffCurrent = pump.shutOffPower / ratedVoltage;
  if (frictionCurrent !== undefined && frictionCurrent > 0.9 * shutOffCurrent) {
    fault(
      context,
      `${frictionCurrent} A`,
      `at most ${(0.9 * shutOffCurrent).toPrecision(3)} A, most of the current with no flow`,
      'Give the current of the motor with no pump on its shaft, or leave it out.',
      ['motor', 'frictionCurrent'],
    );
  }
  const friction = frictionCurrent ?? FRICTION_SHARE * shutOffCurrent;
  if (startCurrent !== undefined && startCurrent < friction) {
    fault(
      context,
      `${startCurrent} A`,
      `at least the friction current, ${friction.toPrecision(3)} A`,
      'A running rotor needs less than one that starts.',
      ['motor', 'startCurrent'],
    );
  }
}

/** Most of ρ g Q H along the curve at rated speed, over the electrical power there. [-] */
function bestEfficiency(pump: {
  shutOffHead: number;
  openFlow: number;
  shutOffPower: number;
  openFlowPower: number;
}): number {
  const { shutOffHead, openFlow, shutOffPower, openFlowPower } = pump;
  let best = 0;
  for (let share = 0.02; share < 1; share += 0.02) {
    const hydraulic = 1000 * 9.80665 * share * openFlow * shutOffHead * (1 - share * share);
    best = Math.max(best, hydraulic / (shutOffPower + (openFlowPower - shutOffPower) * share));
  }
  return best;
}

const curveSchema = z.strictObject({
  voltage: quantity('voltage', 1, 400),
  points: z
    .array(
      z.strictObject({
        flow: quantity('flow', 0, 1e-2),
        head: quantity('length', 0, 50),
        power: quantity('power', 0.01, 1000),
      }),
    )
    .max(100),
});

const curvesSchema = z
  .array(curveSchema)
  .max(12)
  .superRefine((curves, context) => {
    const wrong = faultOfCurves(curves);
    if (wrong !== null) fault(context, wrong.found, wrong.expected, 'Sort the voltages and points, and check them.');
  });

/** Schema of the pump and its drive. */
export const pumpSchema = z
  .strictObject({
    drive: defaulted(choice(['booster', 'direct', 'mains']), 'booster', '', 'judgement: a module of its own'),
    motor: motorSchema.prefault({}),
    boosterEfficiency: quantityOr('fraction', 0.1, 1, 0.9, 'judgement: a plain step-down converter'),
    startPower: quantityOr(
      'power',
      0,
      500,
      2,
      `${pumpSource}; on its own module at most 1.7 % short of the year’s best start (docs/theory/pump-and-control.md)`,
    ),
    stopPower: quantityOr('power', 0, 500, 1.2, pumpSource),
    shutOffHead: quantityOr('length', 0.1, 50, 3, pumpSource),
    openFlow: quantityOr('flow', 1e-6, 1e-2, 10 / 60_000, pumpSource),
    shutOffPower: quantityOr('power', 0.1, 1000, 10, pumpSource),
    openFlowPower: quantityOr('power', 0.1, 1000, 16, pumpSource),
    curves: defaulted(curvesSchema.nullable(), null, '', 'judgement: the plate has no more than the four numbers'),
    startVoltage: quantity('voltage', 0.1, 400).optional(),
  })
  .superRefine((pump, context) => {
    if (pump.stopPower > pump.startPower) {
      fault(
        context,
        `${pump.stopPower} W`,
        `at most the start power, ${pump.startPower} W`,
        'A running pump needs less than one that starts.',
        ['stopPower'],
      );
    }
    // What follows checks a rated point; measured curves have been checked.
    if (pump.curves !== null) return;
    if (pump.openFlowPower < pump.shutOffPower) {
      fault(
        context,
        `${pump.openFlowPower} W`,
        `at least the shut-off power, ${pump.shutOffPower} W`,
        'A centrifugal pump draws more power the more it moves.',
        ['openFlowPower'],
      );
    }
    checkMotor(pump, context);
    const efficiency = bestEfficiency(pump);
    if (efficiency > 1) {
      fault(
        context,
        `${pump.openFlow} m³/s`,
        `a pump that gives the water no more power than it takes, not ${efficiency.toFixed(1)} times as much`,
        'Check head, flow and electrical power together.',
        ['openFlow'],
      );
    }
  });

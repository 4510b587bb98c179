import type { ControlDesign } from '../design/control.ts';
import type { PumpCurveDesign, PumpDesign, PvDesign } from '../design/pump.ts';
import { DesignError } from '../input/errors.ts';
import { curveHead, curvePower, mostVoltage, openFlowOf } from '../physics/loop/pump-curves.ts';
import type { Fill } from './derived-array.ts';
import { FRICTION_SHARE } from './schema/pump.ts';
import type { CheckedInput } from './schema/system.ts';

/** Share of the rated voltage that the winding takes at the rated current; judgement: small motors with permanent magnets. [-] */
const WINDING_SHARE = 0.15;
/** Current that breaks a standing rotor away, over that of its friction when turning; judgement. [-] */
const START_RATIO = 2;

/** A pump with its motor: from its rated point, or as measured. */
export function pumpDefaults(pump: CheckedInput['pump'], fill: Fill): PumpDesign {
  return pump.curves === null ? ratedPump(pump, fill) : measuredPump(pump, pump.curves, fill);
}

/** Share of the least voltage measured at which a pump turns; judgement. [-] */
const START_SHARE = 0.5;

/** Rated point and motor of a measured pump: what its curves have at the highest voltage, and at the start. */
function measuredPump(pump: CheckedInput['pump'], curves: readonly PumpCurveDesign[], fill: Fill): PumpDesign {
  const volts = mostVoltage(curves);
  const openFlow = openFlowOf(curves);
  const startVoltage = fill(
    'pump.startVoltage',
    pump.startVoltage,
    START_SHARE * curves[0]!.voltage,
    'V',
    'judgement: half of the least voltage that was measured',
  );
  const still = curvePower(curves, startVoltage, 0) / startVoltage;
  const open = curvePower(curves, startVoltage, (openFlow * startVoltage) / volts) / startVoltage;
  const taken = 'current that the measured pump takes at its start voltage';
  return {
    ...pump,
    startVoltage,
    shutOffHead: curveHead(curves, volts, 0),
    openFlow,
    shutOffPower: curvePower(curves, volts, 0),
    openFlowPower: curvePower(curves, volts, openFlow),
    motor: {
      ratedVoltage: volts,
      windingResistance: 0,
      frictionCurrent: fill(
        'pump.motor.frictionCurrent',
        pump.motor.frictionCurrent,
        Math.min(still, open),
        'A',
        `${taken}, the lesser of no flow and open flow`,
      ),
      startCurrent: fill(
        'pump.motor.startCurrent',
        pump.motor.startCurrent,
        Math.max(still, open),
        'A',
        `${taken}, the greater of no flow and open flow`,
      ),
    },
  };
}

function ratedPump(pump: CheckedInput['pump'], fill: Fill): PumpDesign {
  const { motor } = pump;
  const { ratedVoltage } = motor;
  const ratedCurrent = pump.openFlowPower / ratedVoltage;
  const frictionCurrent = fill(
    'pump.motor.frictionCurrent',
    motor.frictionCurrent,
    (FRICTION_SHARE * pump.shutOffPower) / ratedVoltage,
    'A',
    'judgement: a tenth of the current with no flow',
  );
  return {
    ...pump,
    // Only a measured pump has a use for it.
    startVoltage: pump.startVoltage ?? 0,
    motor: {
      ratedVoltage,
      windingResistance: fill(
        'pump.motor.windingResistance',
        motor.windingResistance,
        (WINDING_SHARE * ratedVoltage) / ratedCurrent,
        'Ω',
        'judgement: 15 % of the rated voltage is lost in the winding at rated current',
      ),
      frictionCurrent,
      startCurrent: fill(
        'pump.motor.startCurrent',
        motor.startCurrent,
        START_RATIO * frictionCurrent,
        'A',
        'judgement: a standing rotor needs twice the friction of a turning one',
      ),
    },
  };
}

/** Mode of the control where it is not given, and the limit of stagnation. */
export function controlDefaults({ control, loop, pump }: CheckedInput, fill: Fill): ControlDesign {
  const onMains = pump.drive === 'mains';
  if (onMains && control.mode === 'power') {
    throw new DesignError([
      {
        path: 'control.mode',
        found: '"power"',
        expected: '"difference" or "schedule" with a pump on the mains',
        remedy: 'Power is always there; say who stops the pump.',
      },
    ]);
  }
  if (control.nightCooling !== null && (!onMains || loop.layout !== 'closed')) {
    throw new DesignError([
      {
        path: 'control.nightCooling',
        found: onMains ? `with layout "${loop.layout}"` : `with drive "${pump.drive}"`,
        expected: 'a pump on the mains and a closed loop',
        remedy: 'A module gives nothing at night, and water in cold collectors freezes: leave it out.',
      },
    ]);
  }
  return {
    ...control,
    mode: fill(
      'control.mode',
      control.mode,
      onMains ? 'difference' : 'power',
      '',
      onMains ? 'common practice, no source' : 'the module is the controller, common practice, no source',
    ),
    stagnationLimit: fill(
      'control.stagnationLimit',
      control.stagnationLimit,
      null,
      '°C',
      'boiling point of the fluid at loop pressure, at most the limit that the run states',
    ),
  };
}

/**
 * Whether a default has a say in a design: those of another drive or mode than the one chosen are not worth a line in a report.
 */
export function isUsed(path: string, pv: PvDesign, pump: PumpDesign, control: ControlDesign): boolean {
  if (pv.module.ivPoints !== null && /^pv\.module\.(shortCircuit|openCircuit|maximumPower)/.test(path)) return false;
  if (pump.curves !== null && /^pump\.(shutOff|openFlow|motor\.ratedVoltage)/.test(path)) return false;
  if (path.startsWith('pump.motor.') || path === 'pump.startVoltage') return pump.drive === 'direct';
  if (/^pump\.(boosterEfficiency|startPower|stopPower)$/.test(path)) return pump.drive === 'booster';
  if (path.startsWith('pv.')) return pump.drive !== 'mains';
  if (path === 'control.difference.pipeSensorContact') {
    return control.mode === 'difference' && control.difference.collectorSensor === 'pipe';
  }
  if (path.startsWith('control.difference.')) return control.mode === 'difference';
  return path !== 'control.schedule' || control.mode === 'schedule';
}

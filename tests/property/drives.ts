/** Random pumps, and modules that drive them. */
import fc from 'fast-check';
import { number } from './number.ts';

/** Water's weight. [N/m³] */
const WEIGHT = 9807;

const drive = fc.constantFrom('booster', 'direct', 'mains');

/** Pumps of every drive that give the water a twentieth to a half of their power at best: 0.385 ρ g Q0 H0. */
const ratedPumps = fc
  .record({
    drive,
    shutOffHead: number(0.5, 10),
    openFlow: number(3e-5, 8e-4),
    efficiency: number(0.05, 0.5),
    motor: fc.record({ ratedVoltage: number(6, 24) }),
  })
  .map(({ efficiency, ...pump }) => {
    const shutOffPower = Math.max(0.2, (3775 * pump.shutOffHead * pump.openFlow) / efficiency);
    return { ...pump, shutOffPower, openFlowPower: 1.5 * shutOffPower, startPower: 1, stopPower: 0.5 };
  });

/** The same as a list of points at one to three voltages: along H0 (1 − x^n), from no flow or some to open flow or less. */
const measuredPumps = fc
  .record({
    drive,
    shutOffHead: number(0.5, 10),
    openFlow: number(3e-5, 8e-4),
    efficiency: number(0.05, 0.5),
    fall: number(1, 3),
    first: fc.constantFrom(0, 0.02, 0.3),
    last: number(0.5, 1),
    count: fc.integer({ min: 2, max: 9 }),
    voltage: number(6, 24),
    speeds: fc.constantFrom([1], [0.5, 1], [0.45, 0.7, 1]),
  })
  .map(({ count, drive, efficiency, fall, first, last, openFlow, shutOffHead, speeds, voltage }) => {
    const power = Math.min(Math.max(0.3, (WEIGHT * shutOffHead * openFlow) / efficiency), 900);
    return {
      drive,
      startPower: 1,
      stopPower: 0.5,
      curves: speeds.map((speed) => ({
        voltage: voltage * speed,
        points: Array.from({ length: count }, (_, at) => {
          const share = first + ((last - first) * at) / (count - 1);
          // A slow pump is a little worse than affinity has it.
          return {
            flow: speed * openFlow * share,
            head: speed ** 2.1 * shutOffHead * (1 - share ** fall),
            power: speed ** 2.9 * power * (0.6 + 0.4 * share),
          };
        }),
      })),
    };
  });

/** Both kinds. */
export const pumps = fc.oneof(ratedPumps, measuredPumps);

/** What a pump lifts without flow, at most. [m] */
export function headOf(pump: { shutOffHead: number } | { curves: { points: { head: number }[] }[] }): number {
  return 'shutOffHead' in pump ? pump.shutOffHead : pump.curves.at(-1)!.points[0]!.head;
}

const areas = fc.record({ area: fc.constantFrom(null, 0.2) });

/** A module measured with a load: I = Isc (1 − exp((V − Voc)/a)), from near short to near open circuit. */
const measuredModules = fc
  .record({
    shortCircuit: number(0.5, 8),
    cells: fc.constantFrom(18, 36, 60),
    /** a over Voc: an ideality of 1.2 to 1.4. */
    softness: number(0.05, 0.06),
    first: number(0, 0.2),
    last: number(0.99, 1),
    count: fc.integer({ min: 15, max: 40 }),
  })
  .map(({ cells, count, first, last, shortCircuit, softness }) => {
    const open = 0.6 * cells;
    return {
      cells,
      currentTemperatureCoefficient: 0.0005 * shortCircuit,
      voltageTemperatureCoefficient: -0.0017 * cells,
      ivPoints: Array.from({ length: count }, (_, at) => {
        const voltage = open * (first + ((last - first) * at) / (count - 1));
        // Rounding leaves a hair below nought at the open voltage.
        return { voltage, current: Math.max(0, shortCircuit * (1 - Math.exp((voltage - open) / (softness * open)))) };
      }),
    };
  });

/** Modules on a plane of their own or the collectors'. */
export const modules = fc.record({
  modules: fc.integer({ min: 1, max: 5 }),
  inSeries: fc.constantFrom(1, 1, 2),
  tilt: fc.option(number(0, 90), { nil: undefined }),
  azimuth: fc.option(number(0, 360), { nil: undefined }),
  module: fc.oneof(areas, measuredModules),
});

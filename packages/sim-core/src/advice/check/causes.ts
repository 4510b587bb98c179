// What may be wrong, and how a design shows it.
import type { SystemDesign } from '../../design/design.ts';

/** What may be the matter. */
export type CauseCode =
  | 'healthy'
  | 'no-flow'
  | 'pump-fault'
  | 'lost-fluid'
  | 'scaled-coil'
  | 'sediment'
  | 'dirty-or-shaded'
  | 'check-valve'
  | 'mixing-valve'
  | 'sensor-wrong';

/** All of them. */
export const CAUSES: readonly CauseCode[] = [
  'healthy',
  'no-flow',
  'pump-fault',
  'lost-fluid',
  'scaled-coil',
  'sediment',
  'dirty-or-shaded',
  'check-valve',
  'mixing-valve',
  'sensor-wrong',
];

export const CAUSE_NAMES: Readonly<Record<CauseCode, string>> = {
  healthy: 'nothing wrong that these gauges can see',
  'no-flow': 'little or no flow though the pump turns: air lock, closed valve, blocked strainer',
  'pump-fault': 'pump stands or turns too slowly: pump, its controller, its PV module or wiring',
  'lost-fluid': 'the loop has lost fluid',
  'scaled-coil': 'scale on the coil',
  sediment: 'sediment on the tank’s floor buries the coil',
  'dirty-or-shaded': 'dirty, fogged or shaded panels',
  'check-valve': 'check valve leaks: the loop cools the tank at night',
  'mixing-valve': 'mixing valve set too low: less hot water is drawn',
  'sensor-wrong': 'a gauge shows wrong values',
};

/** One form of a fault that can be run. */
export interface Fault {
  readonly cause: CauseCode;
  /** Mild to severe; one alone where there are no degrees. Each leaves the sound design as it is and gives another. */
  readonly degrees: readonly Degree[];
  /** Whether someone at the pump hears it as in a sound system, though nothing flows. */
  readonly turnsAsSound: boolean;
  /** Whether it may begin within the log. */
  readonly suddenly: boolean;
}

/** A degree of a fault. */
export interface Degree {
  readonly words: string;
  readonly apply: (design: SystemDesign) => SystemDesign;
}

/** The whole year without a pump. */
const ALL_YEAR = [{ from: '01-01', to: '12-31', kind: 'pump' }] as const;

const stopped: Degree['apply'] = (design) => ({
  ...design,
  control: { ...design.control, outages: [...design.control.outages, ...ALL_YEAR] },
});

/** Shape of a fault between nothing (0) and its severe form (1). @internal */
export const SHAPES = {
  throttled: (design: SystemDesign, share: number): SystemDesign => ({
    ...design,
    loop: { ...design.loop, fittingLoss: design.loop.fittingLoss + 4000 * 40 ** share },
  }),
  weakModule: (design: SystemDesign, left: number): SystemDesign => {
    const { module } = design.pv;
    const current = {
      shortCircuitCurrent: module.shortCircuitCurrent * left,
      maximumPowerCurrent: module.maximumPowerCurrent * left,
      currentTemperatureCoefficient: module.currentTemperatureCoefficient * left,
    };
    return { ...design, pv: { ...design.pv, module: { ...module, ...current } } };
  },
  stopped,
  leaking: (design: SystemDesign, vesselsAWeek: number): SystemDesign => ({
    ...design,
    loop: { ...design.loop, leak: (vesselsAWeek * design.loop.vesselVolume) / (7 * 86_400) },
  }),
  lowPressure: (design: SystemDesign, fall: number): SystemDesign => ({
    ...design,
    loop: {
      ...design.loop,
      pressure: design.loop.pressure - fall,
      fillPressure: design.loop.fillPressure - fall,
      // A vessel that the liquid has left gives the gas of a softer one.
      vesselPrecharge: Math.min(design.loop.vesselPrecharge, design.loop.fillPressure - fall - 30_000),
    },
  }),
  scaled: (design: SystemDesign, resistance: number): SystemDesign => ({
    ...design,
    coil: { ...design.coil, fouling: design.coil.fouling + resistance },
  }),
  silted: (design: SystemDesign, buried: number): SystemDesign => {
    const { bottom, top } = design.coil;
    const depth = (bottom + buried * (top - bottom)) * design.tank.height;
    return { ...design, tank: { ...design.tank, sedimentDepth: depth } };
  },
  dirty: (design: SystemDesign, lost: number): SystemDesign => {
    const { collector } = design.array;
    return {
      ...design,
      array: { ...design.array, collector: { ...collector, eta0: collector.eta0 * (1 - lost) } },
    };
  },
  shaded: (design: SystemDesign, aside: number): SystemDesign => {
    const { azimuth, slopeLength, tilt, width } = design.array;
    const height = 6 + slopeLength * Math.sin((tilt * Math.PI) / 180);
    const obstacle = { distance: 5, width: 8 + width, height, azimuth: (((azimuth + aside) % 360) + 360) % 360 };
    return { ...design, array: { ...design.array, obstacle } };
  },
  openCheckValve: (design: SystemDesign): SystemDesign => ({ ...design, loop: { ...design.loop, checkValve: false } }),
  coolValve: (design: SystemDesign, below: number): SystemDesign => ({
    ...design,
    draw: { ...design.draw, mixingValve: true, valveTemperature: design.draw.tapTemperature - below },
  }),
} as const;

/** Leaks in vessels' volumes a week: the pressure falls on a line until the vessel is empty, and then at once. */
const LEAKS = [
  ['seeping', 0.01, 0.022],
  ['leaking', 0.022, 0.06],
] as const;

/** Pressure lost, as a share of that at the panels. */
const FALLEN = [
  ['pressure has fallen', 0.3, 0.97],
  ['pressure is gone at the panels', 1.03, 1.2],
] as const;

const degree = (words: string, apply: Degree['apply']): Degree => ({ words, apply });

/** Every fault that the design can express. */
export function faultsOf(design: SystemDesign): Fault[] {
  const fault = (cause: CauseCode, degrees: readonly Degree[], extra: Partial<Fault> = {}): Fault => ({
    cause,
    degrees,
    turnsAsSound: false,
    suddenly: true,
    ...extra,
  });
  const { checkValve, exchanger, makeUp, minimumPressure, pressure } = design.loop;
  const faults = [
    fault('no-flow', [degree('no flow at all', stopped)], { turnsAsSound: true }),
    fault('no-flow', [
      degree('flow throttled', (sound) => SHAPES.throttled(sound, 0)),
      degree('flow throttled to a trickle', (sound) => SHAPES.throttled(sound, 1)),
    ]),
    fault('pump-fault', [degree('the pump stands', stopped)]),
    fault('dirty-or-shaded', [
      degree('a fifth of the light lost', (sound) => SHAPES.dirty(sound, 0.2)),
      degree('more than half of the light lost', (sound) => SHAPES.dirty(sound, 0.6)),
    ]),
    fault('dirty-or-shaded', [degree('shade on the left, seen from the panels', (sound) => SHAPES.shaded(sound, -45))]),
    fault('dirty-or-shaded', [degree('shade on the right, seen from the panels', (sound) => SHAPES.shaded(sound, 45))]),
    fault('mixing-valve', [
      degree('set some 6 K below what the taps want', (sound) => SHAPES.coolValve(sound, 6)),
      degree('set some 15 K below what the taps want', (sound) => SHAPES.coolValve(sound, 15)),
    ]),
  ];
  if (design.pump.drive !== 'mains') {
    faults.push(
      fault('pump-fault', [
        degree('the module gives less than a third of its current', (sound) => SHAPES.weakModule(sound, 0.3)),
        degree('the module gives a sixth of its current', (sound) => SHAPES.weakModule(sound, 0.16)),
      ]),
    );
  }
  if (!makeUp) {
    faults.push(
      ...LEAKS.map(([words, least, most]) =>
        fault(
          'lost-fluid',
          [
            degree(words, (sound) => SHAPES.leaking(sound, least)),
            degree(words, (sound) => SHAPES.leaking(sound, most)),
          ],
          { turnsAsSound: true, suddenly: false },
        ),
      ),
      // Where the last of the pressure goes the loop stops: what lies on either side is no blend of the two.
      ...FALLEN.map(([words, least, most]) =>
        fault(
          'lost-fluid',
          [
            degree(words, (sound) => SHAPES.lowPressure(sound, least * (pressure - minimumPressure))),
            degree(words, (sound) => SHAPES.lowPressure(sound, most * (pressure - minimumPressure))),
          ],
          { turnsAsSound: true },
        ),
      ),
    );
  }
  if (checkValve) faults.push(fault('check-valve', [degree('it no longer shuts', SHAPES.openCheckValve)]));
  if (exchanger === 'coil') {
    faults.push(
      fault('scaled-coil', [
        degree('some scale', (sound) => SHAPES.scaled(sound, 0.004)),
        degree('thick scale', (sound) => SHAPES.scaled(sound, 0.016)),
      ]),
      fault('sediment', [
        degree('a half of the coil is buried', (sound) => SHAPES.silted(sound, 0.5)),
        degree('nearly all of the coil is buried', (sound) => SHAPES.silted(sound, 0.95)),
      ]),
    );
  }
  return faults;
}

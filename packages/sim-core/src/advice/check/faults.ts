// Every fault that a design can express, by form and degree.
import type { SystemDesign } from '../../design/design.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import type { CauseCode, Degree, Fault, FormCode } from './causes.ts';
import { type Change, SHAPES } from './shapes.ts';

/** Conductivity of lime, to say a resistance as a thickness; handbook value from memory, 2 to 2.5. [W/(m·K)] */
export const LIME_CONDUCTIVITY = 2.2;

/** Leaks in vessels' volumes a week: the pressure falls on a line until the vessel is empty, and then at once. */
const LEAKS = [
  ['seeping', 0.01, 0.022],
  ['leaking', 0.022, 0.06],
] as const;
/** Pressure lost, as a share of that at the panels. Where the last of it goes the loop stops: no blend of the two sides. */
const FALLEN = [
  ['pressure-fallen', 0.3, 0.97],
  ['pressure-gone', 1.03, 1.2],
] as const;
/** Lime on the coil, from that of a few years to what chokes it. [m] */
const LIME = [
  ['thin-scale', 0.001, 'scale', 0.004],
  ['scale', 0.004, 'thick-scale', 0.02],
] as const;
/** A limit that stops the pump too early. [K] */
const LIMIT = [
  ['limit-early', 10, 25],
  ['limit-far-too-early', 25, 45],
] as const;
/** Gas left in the vessel, as a share. It goes slowly, so that it is gone all through the log. */
const CHARGE = [
  ['charge-low', 0.5, 0.3],
  ['charge-low', 0.3, 0.18],
  ['charge-gone', 0.18, 0.1],
] as const;
/** Mouth of a jet that stirs the tank as a lost dip tube does: to a third of the tank, and all of it. [m] */
const MOUTH = [
  ['dip-tube-leaks', 0.01, 0.007],
  ['dip-tube-broken', 0.007, 0.004],
] as const;
/** Thermostat off its mark. [K] */
const THERMOSTAT = [
  ['thermostat-low', -8, -20],
  ['thermostat-high', 8, 20],
] as const;

const degree = (code: FormCode, apply: Change, facts: Saying['facts'] = {}): Degree => ({
  form: say(code, facts),
  apply,
});

const fault = (cause: CauseCode, degrees: readonly Degree[], extra: Partial<Fault> = {}): Fault => ({
  cause,
  degrees,
  turnsAsHealthy: false,
  suddenly: true,
  ...extra,
});

/** Every fault that the design can express. */
export function faultsOf(design: SystemDesign): Fault[] {
  return [...flowFaults(design), ...pressureFaults(design), ...coilFaults(design), ...houseFaults(design)];
}

function flowFaults({ control, loop, pump }: SystemDesign): Fault[] {
  const faults = [
    fault('no-flow', [degree('stopped', SHAPES.stopped)], { turnsAsHealthy: true }),
    fault('no-flow', [
      degree('throttled', (healthy) => SHAPES.throttled(healthy, 0)),
      degree('trickle', (healthy) => SHAPES.throttled(healthy, 1)),
    ]),
    fault('pump-fault', [degree('pump-stands', SHAPES.stopped)]),
  ];
  if (pump.drive !== 'mains') {
    faults.push(
      fault('pump-fault', [
        degree('weak-module', (healthy) => SHAPES.weakModule(healthy, 0.3)),
        degree('very-weak-module', (healthy) => SHAPES.weakModule(healthy, 0.16)),
      ]),
    );
  }
  if (control.highLimit !== null) {
    faults.push(
      ...LIMIT.map(([code, ...limits]) =>
        fault(
          'high-limit',
          limits.map((below) =>
            degree(code, (healthy) => SHAPES.lowLimit(healthy, below), { below: fact(below, 'K') }),
          ),
        ),
      ),
    );
  }
  if (loop.checkValve) faults.push(fault('check-valve', [degree('check-valve-open', SHAPES.openCheckValve)]));
  return faults;
}

function pressureFaults({ loop }: SystemDesign): Fault[] {
  const vessel = CHARGE.map(([code, ...limits]) =>
    fault(
      'vessel-charge',
      limits.map((left) => degree(code, (healthy) => SHAPES.flatVessel(healthy, left), { left: fact(left, '-') })),
      { suddenly: false },
    ),
  );
  if (loop.makeUp) return vessel;
  const atPanels = loop.pressure - loop.minimumPressure;
  return [
    ...vessel,
    ...LEAKS.map(([code, ...limits]) =>
      fault(
        'lost-fluid',
        limits.map((share) => degree(code, (healthy) => SHAPES.leaking(healthy, share))),
        { turnsAsHealthy: true, suddenly: false },
      ),
    ),
    ...FALLEN.map(([code, ...limits]) =>
      fault(
        'lost-fluid',
        limits.map((share) => degree(code, (healthy) => SHAPES.lowPressure(healthy, share * atPanels))),
        { turnsAsHealthy: true },
      ),
    ),
  ];
}

function coilFaults({ loop }: SystemDesign): Fault[] {
  if (loop.exchanger !== 'coil') return [];
  const lime = (code: FormCode, thickness: number): Degree =>
    degree(code, (healthy) => SHAPES.scaled(healthy, thickness / LIME_CONDUCTIVITY), {
      thickness: fact(thickness, 'm'),
    });
  return [
    ...LIME.map(([thin, from, thick, to]) => fault('scaled-coil', [lime(thin, from), lime(thick, to)])),
    fault('sediment', [
      degree('half-buried', (healthy) => SHAPES.silted(healthy, 0.5)),
      degree('nearly-buried', (healthy) => SHAPES.silted(healthy, 0.95)),
    ]),
  ];
}

function houseFaults({ tank }: SystemDesign): Fault[] {
  const cool = (below: number): Degree =>
    degree('valve-cool', (healthy) => SHAPES.coolValve(healthy, below), { below: fact(below, 'K') });
  const faults = [
    fault('dirty-or-shaded', [
      degree('light-lost', (healthy) => SHAPES.dirty(healthy, 0.2), { lost: fact(0.2, '-') }),
      degree('most-light-lost', (healthy) => SHAPES.dirty(healthy, 0.6), { lost: fact(0.6, '-') }),
    ]),
    fault('dirty-or-shaded', [degree('shade-left', (healthy) => SHAPES.shaded(healthy, -45))]),
    fault('dirty-or-shaded', [degree('shade-right', (healthy) => SHAPES.shaded(healthy, 45))]),
    fault('mixing-valve', [cool(6), cool(15)]),
    ...THERMOSTAT.map(([code, ...limits]) =>
      fault(
        'thermostat',
        limits.map((off) =>
          degree(code, (healthy) => SHAPES.thermostat(healthy, off), { off: fact(Math.abs(off), 'K') }),
        ),
      ),
    ),
  ];
  // A tank whose inlet stirs it by design has no dip tube to lose.
  if (tank.inletDiameter === null)
    faults.push(
      ...MOUTH.map(([code, ...limits]) =>
        fault(
          'dip-tube',
          limits.map((mouth) => degree(code, (healthy) => SHAPES.stirred(healthy, mouth))),
        ),
      ),
    );
  return faults;
}

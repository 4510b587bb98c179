// What each fault does to a design.
import type { SystemDesign } from '../../design/design.ts';
import { changeCollectors } from '../../physics/collector/groups.ts';
import { EN_12828_AIR } from '../../physics/loop/vessel.ts';

/** A fault as a change of a design. */
export type Change = (design: SystemDesign) => SystemDesign;

/** The whole year without a pump. */
const ALL_YEAR = [{ from: '01-01', to: '12-31', kind: 'pump' }] as const;
/** Lowest setting of a limit that is tried. [°C] */
const LOWEST_LIMIT = 30;

const withLoop = (design: SystemDesign, change: Partial<SystemDesign['loop']>): SystemDesign => ({
  ...design,
  loop: { ...design.loop, ...change },
});
const withTank = (design: SystemDesign, change: Partial<SystemDesign['tank']>): SystemDesign => ({
  ...design,
  tank: { ...design.tank, ...change },
});
const withArray = (design: SystemDesign, change: Partial<SystemDesign['array']>): SystemDesign => ({
  ...design,
  array: { ...design.array, ...change },
});

/** Shape of a fault between nothing (0) and its severe form (1). @internal */
export const SHAPES = {
  stopped: (design: SystemDesign): SystemDesign => ({
    ...design,
    control: { ...design.control, outages: [...design.control.outages, ...ALL_YEAR] },
  }),
  throttled: (design: SystemDesign, share: number): SystemDesign =>
    withLoop(design, { fittingLoss: design.loop.fittingLoss + 4000 * 40 ** share }),
  weakModule: (design: SystemDesign, left: number): SystemDesign => {
    const { module } = design.pv;
    const current = {
      shortCircuitCurrent: module.shortCircuitCurrent * left,
      maximumPowerCurrent: module.maximumPowerCurrent * left,
      currentTemperatureCoefficient: module.currentTemperatureCoefficient * left,
    };
    return { ...design, pv: { ...design.pv, module: { ...module, ...current } } };
  },
  lowLimit: (design: SystemDesign, below: number): SystemDesign => {
    const { highLimit } = design.control;
    const limit = Math.max(LOWEST_LIMIT, (highLimit ?? 85) - below);
    return { ...design, control: { ...design.control, highLimit: limit } };
  },
  leaking: (design: SystemDesign, vesselsAWeek: number): SystemDesign =>
    withLoop(design, { leak: (vesselsAWeek * design.loop.vesselVolume) / (7 * 86_400) }),
  lowPressure: (design: SystemDesign, fall: number): SystemDesign =>
    withLoop(design, {
      pressure: design.loop.pressure - fall,
      fillPressure: design.loop.fillPressure - fall,
      // A vessel that the liquid has left gives the gas of a softer one.
      vesselPrecharge: Math.min(design.loop.vesselPrecharge, design.loop.fillPressure - fall - 30_000),
    }),
  /** Gas has leaked, and liquid was filled in until the gauge stood at its mark again: the little gas left is stiff. */
  flatVessel: (design: SystemDesign, gasLeft: number): SystemDesign =>
    withLoop(design, {
      vesselPrecharge: gasLeft * (design.loop.vesselPrecharge + EN_12828_AIR) - EN_12828_AIR,
    }),
  scaled: (design: SystemDesign, resistance: number): SystemDesign => ({
    ...design,
    coil: { ...design.coil, fouling: design.coil.fouling + resistance },
  }),
  silted: (design: SystemDesign, buried: number): SystemDesign => {
    const { bottom, top } = design.coil;
    return withTank(design, { sedimentDepth: (bottom + buried * (top - bottom)) * design.tank.height });
  },
  dirty: (design: SystemDesign, lost: number): SystemDesign =>
    changeCollectors(design, ({ eta0 }) => ({ eta0: eta0 * (1 - lost) })),
  shaded: (design: SystemDesign, aside: number): SystemDesign => {
    const { azimuth, slopeLength, tilt, width } = design.array;
    const height = 6 + slopeLength * Math.sin((tilt * Math.PI) / 180);
    const obstacle = { distance: 5, width: 8 + width, height, azimuth: (((azimuth + aside) % 360) + 360) % 360 };
    // One tree before all of them, wherever they look.
    const groups = design.array.groups.map((group) => ({ ...group, obstacle }));
    return withArray(design, { obstacle, groups });
  },
  openCheckValve: (design: SystemDesign): SystemDesign => withLoop(design, { checkValve: false }),
  /** Cold water no longer led to the floor stirs the tank: as a jet from a mouth so narrow that it reaches far up. */
  stirred: (design: SystemDesign, mouth: number): SystemDesign => withTank(design, { inletDiameter: mouth }),
  coolValve: (design: SystemDesign, below: number): SystemDesign => ({
    ...design,
    draw: { ...design.draw, mixingValve: true, valveTemperature: design.draw.tapTemperature - below },
  }),
  thermostat: (design: SystemDesign, above: number): SystemDesign => ({
    ...design,
    heater: { ...design.heater, setTemperature: Math.max(5, design.heater.setTemperature + above) },
  }),
} as const;

import type { DesignAssumption, SystemDesign } from '../design/design.ts';
import { DesignError } from '../input/errors.ts';
import { coilsOf } from '../physics/loop/coils.ts';
import { plateOf } from '../physics/pv/points.ts';
import { arrayDefaults, type Fill } from './derived-array.ts';
import { drawDefaults } from './derived-draw.ts';
import { baselineHeater, heaterDefaults } from './derived-heater.ts';
import { loopDefaults } from './derived-loop.ts';
import { controlDefaults, pumpDefaults } from './derived-pump.ts';
import { refuseDeepSediment, secondTankDefaults } from './derived-second-tank.ts';
import type { CheckedInput } from './schema/system.ts';

/** Height over diameter of an upright storage tank; common practice, no source. */
const TANK_SLENDERNESS = 2.5;
/** Foam on a storage tank: thickness [m] and conductivity [W/(m·K)]; judgement. */
const TANK_FOAM = { thickness: 0.05, conductivity: 0.035 };
/** Fittings and their heat bridges make a tank lose more than its foam does; judgement. [-] */
const FITTING_ALLOWANCE = 1.3;
/** Water near 50 °C [W/(m·K)], and a steel wall: conductivity [W/(m·K)] and thickness [m]. */
const COLUMN = { water: 0.64, steel: 50, wall: 0.0025 };
/**
 * Fills the defaults that follow from other fields of the design and notes each with its source.
 *
 * @param input - The checked input, in SI.
 * @param assumptions - Receives one entry for each default filled here.
 */
export function derivedDefaults(
  input: CheckedInput,
  assumptions: DesignAssumption[],
): Omit<SystemDesign, 'assumptions'> {
  const { array, pv, tank, draw, heater } = input;

  const fill: Fill = (path, given, value, unit, source) => {
    if (given !== undefined) return given;
    assumptions.push({ path, value, unit, source });
    return value;
  };

  const { roomByMonth } = tank;
  const roomTemperature = fill(
    'tank.roomTemperature',
    tank.roomTemperature,
    Array.isArray(roomByMonth) ? mean(roomByMonth) : roomByMonth === 'outdoors' ? 10 : 18,
    '°C',
    roomByMonth === null
      ? 'judgement: a cellar or utility room'
      : 'mean of the months, or of a temperate outdoors; judgement',
  );
  const height = fill(
    'tank.height',
    tank.height,
    Math.cbrt((4 * tank.volume * TANK_SLENDERNESS ** 2) / Math.PI),
    'm',
    `height of ${TANK_SLENDERNESS} diameters, common practice, no source`,
  );
  refuseDeepSediment('tank.sedimentDepth', tank.sedimentDepth, height);
  refuseGroupsWithoutValve(input);
  const diameter = Math.sqrt((4 * tank.volume) / (Math.PI * height));
  const surface = Math.PI * diameter * height + (Math.PI / 2) * diameter ** 2;
  const filledArray = arrayDefaults(array, fill);
  const backup = heaterDefaults(heater, roomTemperature, draw.tapTemperature, fill);

  refuseRing(draw.ring !== null, backup.volume);

  const filledTank = {
    ...tank,
    roomTemperature,
    height,
    lossCoefficient: fill(
      'tank.lossCoefficient',
      tank.lossCoefficient,
      (FITTING_ALLOWANCE * surface * TANK_FOAM.conductivity) / TANK_FOAM.thickness,
      'W/K',
      'judgement: foam of a common thickness all round, a third more for fittings',
    ),
    verticalConductivity: fill(
      'tank.verticalConductivity',
      tank.verticalConductivity,
      COLUMN.water + (4 * COLUMN.wall * COLUMN.steel) / diameter,
      'W/(m·K)',
      'water column and a thin steel wall in parallel',
    ),
    initialTemperature: fill(
      'tank.initialTemperature',
      tank.initialTemperature,
      Math.max(roomTemperature, 0),
      '°C',
      'judgement: as its room',
    ),
  };
  const second = secondTankDefaults(input, filledTank, fill);

  return {
    ...input,
    array: filledArray,
    pv: {
      ...pv,
      module: pv.module.ivPoints === null ? pv.module : { ...pv.module, ...plateOf(pv.module.ivPoints) },
      tilt: fill('pv.tilt', pv.tilt, array.tilt, '°', 'judgement: module in the collectors’ plane'),
      azimuth: fill('pv.azimuth', pv.azimuth, array.azimuth, '°', 'judgement: module in the collectors’ plane'),
    },
    loop: loopDefaults(input, filledArray, coilsOf(input.coil, second), fill),
    tank: { ...filledTank, second },
    draw: drawDefaults(draw, fill),
    heater: backup,
    baseline: baselineHeater(heater, backup, fill),
    pump: pumpDefaults(input.pump, fill),
    control: controlDefaults(input, fill),
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** What comes back from a ring must have a store to go to. */
function refuseRing(hasRing: boolean, store: number): void {
  if (!hasRing || store > 0) return;
  const expected = 'a heater with a store, which the ring’s water comes back to';
  const remedy = 'Choose a stored heater, or give the pipe to the taps as draw.hotPipe.';
  throw new DesignError([{ path: 'draw.ring', found: 'a ring at a heater without a store', expected, remedy }]);
}

/** Flow by buoyancy is modelled through one array. */
function refuseGroupsWithoutValve({ array, loop }: CheckedInput): void {
  if (loop.checkValve || array.groups.length === 0) return;
  const found = 'false with array.groups';
  const expected = 'true: flow by buoyancy is modelled through one array only';
  throw new DesignError([{ path: 'loop.checkValve', found, expected, remedy: 'Leave the field out.' }]);
}

import type { DrawProfileName, HouseholdName, TappingName } from '../../design/house.ts';
import { DesignError, quote } from '../../input/errors.ts';
import { HOUSEHOLD_SHAPES } from './household.ts';
import { TAPPING_TABLE, type TappingRow } from './tapping-data.ts';

/** Cold water of the regulation's tests (EN 13203-2, EN 16147; from memory). [°C] */
const TEST_COLD_WATER = 10;

/** Heat capacity of water by volume that goes with the regulation's volumes; computed at mixed temperatures. [J/(m³·K)] */
const WATER_HEAT_CAPACITY = 4.18e6;

/** One draw of a day. */
export interface DrawEvent {
  /** Start after 00:00. [s] */
  readonly start: number;
  /** Heat above cold water of 10 °C. [J] */
  readonly energy: number;
  /** Least flow at which the water counts. [m³/s] */
  readonly flow: number;
  /** Temperature from which the water counts, T_m. [°C] */
  readonly usefulTemperature: number;
  /** Temperature that must be reached in the draw, T_p; `null` where the table has none. [°C] */
  readonly peakTemperature: number | null;
  /** Water of T_p, or T_m where there is none, that carries the heat above 10 °C. [m³] */
  readonly volume: number;
}

/** How a day's hot water is spread over its hours. */
export interface DrawProfile {
  /** As asked for. */
  readonly name: DrawProfileName;
  /** Where the shape comes from. */
  readonly source: string;
  /** Share of the day's heat in each hour from 00:00; they add up to 1. Shape [24]. [-] */
  readonly hourlyShares: readonly number[];
  /** Heat of the profile's day; `null` for a mere shape. [J] */
  readonly dailyEnergy: number | null;
  /** Draws of the day in order; empty for a mere shape. */
  readonly events: readonly DrawEvent[];
}

/**
 * A day's hot water by name: a tapping profile of EU regulation 812/2013 (3XS to XXL), or one of three household shapes of ours
 * (`level`, `morning`, `evening`), which are judgement.
 *
 * A draw counts in the hour in which it starts; none of the table's runs past that hour by its own flow. The shares are of
 * heat; with one temperature at the taps and one of the mains they are shares of volume too.
 *
 * @param name - See {@link DrawProfileName}.
 * @throws {@link DesignError} for an unknown name.
 * @see Regulation (EU) No 812/2013, Annex VII, Table 3.
 * @example
 * drawProfile('M').dailyEnergy; // 5.845 kWh = 21.042 MJ
 */
export function drawProfile(name: DrawProfileName): DrawProfile {
  if (Object.hasOwn(TAPPING_TABLE, name)) return tappingProfile(name as TappingName);
  if (Object.hasOwn(HOUSEHOLD_SHAPES, name)) {
    const shape = HOUSEHOLD_SHAPES[name as HouseholdName];
    return { name, source: shape.source, hourlyShares: shares(shape.weights), dailyEnergy: null, events: [] };
  }
  throw new DesignError([
    {
      path: 'profile',
      found: quote(name),
      expected: [...Object.keys(TAPPING_TABLE), ...Object.keys(HOUSEHOLD_SHAPES)].join(', '),
      remedy: 'Choose one of these, or give twenty-four shares of your own.',
    },
  ]);
}

function tappingProfile(name: TappingName): DrawProfile {
  const events = TAPPING_TABLE[name].map(drawEvent);
  const weights = new Array<number>(24).fill(0);
  for (const event of events) weights[Math.floor(event.start / 3600)]! += event.energy;
  return {
    name,
    source: `Regulation (EU) No 812/2013, Annex VII, Table 3, profile ${name}`,
    hourlyShares: shares(weights),
    dailyEnergy: events.reduce((sum, event) => sum + event.energy, 0),
    events,
  };
}

function drawEvent([time, energy_kWh, flow_L_per_min, usefulTemperature, peak]: TappingRow): DrawEvent {
  const [hours, minutes] = time.split(':').map(Number);
  const energy = energy_kWh * 3.6e6;
  const peakTemperature = peak ?? null;
  const warming = (peakTemperature ?? usefulTemperature) - TEST_COLD_WATER;
  return {
    start: hours! * 3600 + minutes! * 60,
    energy,
    flow: flow_L_per_min / 6e4,
    usefulTemperature,
    peakTemperature,
    volume: energy / (WATER_HEAT_CAPACITY * warming),
  };
}

/** Weights made to add up to 1. */
function shares(weights: readonly number[]): readonly number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

import type { EnergyCarrier, HeaterDesign, HeaterFuel, HeaterKind } from '../design/design.ts';
import { DesignError, show } from '../input/errors.ts';
import { grossEfficiency } from '../physics/backup/fuels.ts';
import { lossOfLabelClass } from '../physics/backup/labels.ts';
import type { Fill } from './derived-array.ts';
import type { CheckedInput } from './schema/system.ts';

const ROOM_SOURCE = 'judgement: in the tank’s room';
const HYGIENE_SOURCE = 'storage temperature against legionella, HSE HSG274 part 2 (page quoting it)';
const CLASS_SOURCE = 'standing loss of the worst store of label class B, Regulation (EU) No 812/2013 (from memory)';
const RESISTANCE_SOURCE = 'electric resistance in the water: all of it is heat';

/** An instantaneous heater is set this much above the taps, at least to the least setting; judgement. [K], [°C] */
const OVER_TAPS = 5;
/** Least flow of an instantaneous heater. [m³/s] */
const LEAST_FLOW = 2 / 60_000;
const LEAST_SETTING = 40;

const BURNERS: readonly HeaterKind[] = ['stored-gas', 'instantaneous-gas', 'stored-boiler', 'boiler-coil'];
const GASES: readonly (HeaterFuel | null)[] = [null, 'natural-gas', 'propane', 'lpg'];

const carrierOf = (kind: HeaterKind, fuel: HeaterFuel | null): EnergyCarrier => {
  if (!BURNERS.includes(kind)) return 'electricity';
  if (fuel === 'district-heat') return 'heat';
  return GASES.includes(fuel) ? 'gas' : 'fuel';
};

interface Default {
  readonly value: number;
  readonly source: string;
}

const STORED: readonly HeaterKind[] = ['stored-gas', 'stored-electric', 'stored-boiler', 'heat-pump'];

const POWER: Readonly<Record<HeaterKind, Default>> = {
  'stored-gas': {
    value: 9000,
    source: 'burner of a common stored gas heater at its efficiency, common practice, no source',
  },
  'stored-boiler': { value: 15_000, source: 'coil of a common store behind a boiler, common practice, no source' },
  'boiler-coil': { value: 15_000, source: 'coil of a common store behind a boiler, common practice, no source' },
  'heat-pump': { value: 1800, source: 'heat of a common heat pump for hot water, 1.5 to 2.5 kW (from memory)' },
  'stored-electric': { value: 4500, source: 'one element of a common electric store, common practice, no source' },
  'instantaneous-gas': { value: 28_000, source: 'a common wall-hung heater, common practice, no source' },
  'instantaneous-electric': { value: 21_000, source: 'a common three-phase heater, common practice, no source' },
  element: { value: 3000, source: 'a common screw-in element, common practice, no source' },
};

const EFFICIENCY: Readonly<Record<HeaterKind, Default>> = {
  'stored-gas': {
    value: 0.77,
    source: 'recovery efficiency of atmospheric stored gas heaters, 0.75 to 0.80 (from memory)',
  },
  'stored-boiler': {
    value: 0.8,
    source: 'boilers without condensing through a summer and winter, 0.75 to 0.85 by gross value (from memory)',
  },
  'boiler-coil': {
    value: 0.8,
    source: 'boilers without condensing through a summer and winter, 0.75 to 0.85 by gross value (from memory)',
  },
  'heat-pump': { value: 1, source: '' },
  'stored-electric': { value: 1, source: RESISTANCE_SOURCE },
  'instantaneous-gas': { value: 0.82, source: 'non-condensing heaters, energy factor near 0.82 (from memory)' },
  'instantaneous-electric': { value: 0.98, source: 'losses of its cables and case; judgement' },
  element: { value: 1, source: RESISTANCE_SOURCE },
};

/** What feeds a store with heat from a network. */
const STATION: Default = { value: 0.98, source: 'losses of the station’s exchanger; judgement' };

const MINIMUM_POWER: Readonly<Partial<Record<HeaterKind, Default>>> = {
  'instantaneous-gas': {
    value: 5000,
    source: 'least flame of older heaters, a fifth to a sixth of their most; common practice, no source',
  },
  'instantaneous-electric': { value: 1000, source: 'judgement: first stage of electronic control' },
};

const STANDBY_POWER: Readonly<Record<HeaterKind, Default>> = {
  'stored-gas': { value: 0, source: 'standing pilot, no electronics; judgement' },
  'stored-boiler': { value: 3, source: 'electronic control and pump of the store, a mean; judgement' },
  'boiler-coil': { value: 3, source: 'electronic control and pump of the coil, a mean; judgement' },
  'heat-pump': { value: 3, source: 'electronic control and display, judgement' },
  'stored-electric': { value: 0, source: 'thermostat without electronics; judgement' },
  'instantaneous-gas': { value: 3, source: 'electronic control and display, judgement' },
  'instantaneous-electric': { value: 3, source: 'electronic control and display, judgement' },
  element: { value: 0, source: 'thermostat without electronics; judgement' },
};

/** The heater with the defaults of its kind. */
export function heaterDefaults(
  heater: CheckedInput['heater'],
  tankRoom: number,
  tapTemperature: number,
  fill: Fill,
): HeaterDesign {
  const { kind } = heater;
  const stored = STORED.includes(kind);
  const flowThrough = kind === 'instantaneous-gas' || kind === 'instantaneous-electric';
  const by = (field: 'burnerPower' | 'standbyPower', unit: string, preset: Default) =>
    fill(`heater.${field}`, heater[field], preset.value, unit, preset.source);
  const volume = stored
    ? fill('heater.volume', heater.volume, 0.15, 'm³', 'a common size of stored heater, common practice, no source')
    : 0;
  const setTemperature = flowThrough
    ? fill(
        'heater.setTemperature',
        heater.setTemperature,
        Math.max(tapTemperature + OVER_TAPS, LEAST_SETTING),
        '°C',
        'judgement: a little above the taps; nothing is stored',
      )
    : fill('heater.setTemperature', heater.setTemperature, 60, '°C', HYGIENE_SOURCE);
  const burnerPower = by('burnerPower', 'W', POWER[kind]);
  const least = MINIMUM_POWER[kind];
  const fuel =
    kind === 'stored-boiler' || kind === 'boiler-coil'
      ? fill<HeaterFuel>('heater.fuel', heater.fuel ?? undefined, 'heating-oil', '', 'judgement: a house with a boiler')
      : (heater.fuel ?? null);
  return {
    kind,
    carrier: carrierOf(kind, fuel),
    fuel,
    volume,
    setTemperature,
    burnerPower,
    burnerEfficiency: efficiency(heater, fuel, fill),
    cop:
      kind === 'heat-pump'
        ? (heater.cop ?? {
            carnotShare: fill(
              'heater.cop.carnotShare',
              undefined,
              0.4,
              '-',
              'judgement: heat pumps for hot water reach 0.35 to 0.45 of Carnot',
            ),
          })
        : null,
    airFrom:
      kind === 'heat-pump'
        ? fill(
            'heater.airFrom',
            heater.airFrom,
            'outdoors',
            '',
            'judgement: a room that it cools in winter is heated otherwise',
          )
        : 'outdoors',
    sparePv: heater.sparePv ?? null,
    minimumPower: least
      ? fill('heater.minimumPower', heater.minimumPower, Math.min(least.value, burnerPower), 'W', least.source)
      : 0,
    minimumRise: flowThrough
      ? fill('heater.minimumRise', heater.minimumRise, 0, 'K', 'judgement: the least power decides')
      : 0,
    minimumFlow: flowThrough
      ? fill(
          'heater.minimumFlow',
          heater.minimumFlow,
          LEAST_FLOW,
          'm³/s',
          'flow switches of such heaters, of which it is near the middle (from memory)',
        )
      : 0,
    standbyPower: by('standbyPower', 'W', STANDBY_POWER[kind]),
    lossCoefficient: stored ? storedLoss(heater, kind, volume, fill) : 0,
    roomTemperature: stored
      ? fill('heater.roomTemperature', heater.roomTemperature, tankRoom, '°C', ROOM_SOURCE)
      : tankRoom,
    elementHeight:
      kind === 'element' || kind === 'boiler-coil'
        ? fill('heater.elementHeight', heater.elementHeight, 0.6, '-', 'judgement: above the coil, two fifths over it')
        : 0,
    ...ownCoil(heater, fill),
    offDays: heater.offDays,
    heatingHours: heater.heatingHours,
  };
}

/** A boiler's coil in the solar tank, above that of the sun. */
function ownCoil(heater: CheckedInput['heater'], fill: Fill) {
  if (heater.kind !== 'boiler-coil') return { coilTop: 0, coilConductance: 0, boilerTemperature: 0 };
  const { coilTop, coilConductance, boilerTemperature } = heater;
  return {
    coilTop: fill('heater.coilTop', coilTop, 0.9, '-', 'judgement: upper third of the tank'),
    coilConductance: fill('heater.coilConductance', coilConductance, 400, 'W/K', 'judgement: 1 m² of coil'),
    boilerTemperature: fill('heater.boilerTemperature', boilerTemperature, 75, '°C', 'judgement: boiler at 80 °C'),
  };
}

/** By gross calorific value, from one by net where that was given; a heat pump has its curve in place of it. */
function efficiency(heater: CheckedInput['heater'], fuel: HeaterFuel | null, fill: Fill): number {
  const { burnerEfficiency, kind, netEfficiency } = heater;
  if (kind === 'heat-pump') return 1;
  if (netEfficiency !== undefined && fuel !== null) return ofNet(fuel, netEfficiency);
  const { value, source } = fuel === 'district-heat' ? STATION : EFFICIENCY[kind];
  return fill('heater.burnerEfficiency', burnerEfficiency, value, '-', source);
}

/** @throws {@link DesignError} where more than all of the heat would go into the water. */
function ofNet(fuel: HeaterFuel, netEfficiency: number): number {
  const gross = grossEfficiency(fuel, netEfficiency);
  if (gross <= 1) return gross;
  const expected = `at most ${show(netEfficiency / gross)} with "${fuel}": all of the heat by gross calorific value`;
  const remedy = 'Check fuel and efficiency with the boiler’s papers.';
  throw new DesignError([{ path: 'heater.netEfficiency', found: String(netEfficiency), expected, remedy }]);
}

function storedLoss(heater: CheckedInput['heater'], kind: HeaterKind, volume: number, fill: Fill): number {
  return kind === 'stored-gas'
    ? fill(
        'heater.lossCoefficient',
        heater.lossCoefficient,
        5,
        'W/K',
        'stored gas heater with an open flue (from memory)',
      )
    : fill('heater.lossCoefficient', heater.lossCoefficient, lossOfLabelClass(volume, 'B'), 'W/K', CLASS_SOURCE);
}

/**
 * Heater of the house without the sun: the same, its timer too, but never off for a season; in place of an element or coil in the tank a
 * store of the same kind.
 */
export function baselineHeater(input: CheckedInput['heater'], own: HeaterDesign, fill: Fill): HeaterDesign {
  const heater = own.offDays.length === 0 ? own : { ...own, offDays: [] };
  if (heater.kind !== 'element' && heater.kind !== 'boiler-coil') return heater;
  const volume = fill(
    'heater.baselineVolume',
    input.baselineVolume,
    0.15,
    'm³',
    'a common size of stored heater, common practice, no source',
  );
  const lossCoefficient = lossOfLabelClass(volume, 'B');
  const kind = heater.kind === 'element' ? 'stored-electric' : 'stored-boiler';
  return { ...heater, kind, volume, lossCoefficient, elementHeight: 0 };
}

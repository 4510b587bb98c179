import type { EnergyCarrier, HeaterDesign, HeaterKind } from '../design/design.ts';
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

const carrierOf = (kind: HeaterKind): EnergyCarrier =>
  kind === 'stored-gas' || kind === 'instantaneous-gas' ? 'gas' : 'electricity';

interface Default {
  readonly value: number;
  readonly source: string;
}

const POWER: Readonly<Record<HeaterKind, Default>> = {
  'stored-gas': {
    value: 9000,
    source: 'burner of a common stored gas heater at its efficiency, common practice, no source',
  },
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
  'stored-electric': { value: 1, source: RESISTANCE_SOURCE },
  'instantaneous-gas': { value: 0.82, source: 'non-condensing heaters, energy factor near 0.82 (from memory)' },
  'instantaneous-electric': { value: 0.98, source: 'losses of its cables and case; judgement' },
  element: { value: 1, source: RESISTANCE_SOURCE },
};

const MINIMUM_POWER: Readonly<Partial<Record<HeaterKind, Default>>> = {
  'instantaneous-gas': {
    value: 5000,
    source: 'least flame of older heaters, a fifth to a sixth of their most; common practice, no source',
  },
  'instantaneous-electric': { value: 1000, source: 'judgement: first stage of electronic control' },
};

const STANDBY_POWER: Readonly<Record<HeaterKind, Default>> = {
  'stored-gas': { value: 0, source: 'standing pilot, no electronics; judgement' },
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
  const stored = kind === 'stored-gas' || kind === 'stored-electric';
  const flowThrough = kind === 'instantaneous-gas' || kind === 'instantaneous-electric';
  const by = (field: 'burnerPower' | 'burnerEfficiency' | 'standbyPower', unit: string, preset: Default) =>
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
  return {
    kind,
    carrier: carrierOf(kind),
    volume,
    setTemperature,
    burnerPower,
    burnerEfficiency: by('burnerEfficiency', '-', EFFICIENCY[kind]),
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
          'flow switches of such heaters, 1.5 to 3 L/min (from memory)',
        )
      : 0,
    standbyPower: by('standbyPower', 'W', STANDBY_POWER[kind]),
    lossCoefficient: stored ? storedLoss(heater, kind, volume, fill) : 0,
    roomTemperature: stored
      ? fill('heater.roomTemperature', heater.roomTemperature, tankRoom, '°C', ROOM_SOURCE)
      : tankRoom,
    elementHeight:
      kind === 'element'
        ? fill('heater.elementHeight', heater.elementHeight, 0.6, '-', 'judgement: above the coil, two fifths over it')
        : 0,
    offDays: heater.offDays,
    heatingHours: heater.heatingHours,
  };
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
 * Heater of the house without the sun: the same, its timer too, but never off for a season; in place of an element in the tank a
 * stored electric one.
 */
export function baselineHeater(input: CheckedInput['heater'], own: HeaterDesign, fill: Fill): HeaterDesign {
  const heater = own.offDays.length === 0 ? own : { ...own, offDays: [] };
  if (heater.kind !== 'element') return heater;
  const volume = fill(
    'heater.baselineVolume',
    input.baselineVolume,
    0.15,
    'm³',
    'a common size of stored heater, common practice, no source',
  );
  const lossCoefficient = lossOfLabelClass(volume, 'B');
  return { ...heater, kind: 'stored-electric', volume, lossCoefficient, elementHeight: 0 };
}

/** The system in one line, in a fixed order: what someone needs to build it again in mind. */
import type { SystemDesign } from '@noonloop/sim-core';
import { arrayArea, type Glycol, glycolVolumeFromMass } from '@noonloop/sim-core/formulas';
import type { Site } from '@noonloop/weather-io';
import { plainText } from '../escape.ts';
import { FUELS } from '../money/fuels.ts';
import { formatNumber, formatQuantity, type Units } from '../units.ts';

/** One part of the line; the same part of several designs can be set side by side. */
export interface SystemPart {
  /** Which part. */
  readonly part: 'panels' | 'area' | 'tilt' | 'facing' | 'tank' | 'water' | 'glycol' | 'heater';
  /** In words, `2 panels`, `facing south-south-west`. */
  readonly words: string;
}

const SIXTEENTHS = [
  'north',
  'north-north-east',
  'north-east',
  'east-north-east',
  'east',
  'east-south-east',
  'south-east',
  'south-south-east',
  'south',
  'south-south-west',
  'south-west',
  'west-south-west',
  'west',
  'west-north-west',
  'north-west',
  'north-north-west',
] as const;

/** Compass direction in words, by sixteenths. @param azimuth - clockwise from north, 0 to 360 [°] */
export const facingWords = (azimuth: number): string => SIXTEENTHS[Math.round(azimuth / 22.5) % 16]!;

const HEATERS: Readonly<Record<SystemDesign['heater']['kind'], (fuel: string) => string>> = {
  'stored-gas': (fuel) => `${fuel} heater behind`,
  'stored-electric': () => 'electric heater behind',
  'stored-boiler': (fuel) => `store behind, warmed by ${fuel}`,
  'heat-pump': () => 'heat pump behind',
  'instantaneous-gas': (fuel) => `${fuel} flow-through heater behind`,
  'instantaneous-electric': () => 'electric flow-through heater behind',
  'boiler-coil': (fuel) => `${fuel} boiler by a coil in the tank`,
  element: () => 'electric element in the tank',
};

/** By volume before mixing, as it is bought. */
function glycolWords({ fluid, glycolMassFraction, layout }: SystemDesign['loop']): string {
  if (layout === 'drain-back') return 'water that drains back';
  if (layout === 'direct') return 'the tank’s water in the collectors';
  if (fluid === 'water' || glycolMassFraction === 0) return 'water in the loop';
  const share = Math.round(100 * glycolVolumeFromMass(fluid as Glycol, glycolMassFraction));
  return `${share} % ${fluid === 'propylene-glycol' ? 'glycol' : 'ethylene glycol'} by volume`;
}

/** Panels and their planes; of several groups the sum, and each tilt and direction once. */
function roofParts(array: SystemDesign['array'], units: Units): SystemPart[] {
  const { azimuth, collector, groups, summerTilt, tilt } = array;
  const planes = [{ azimuth, tilt }, ...groups];
  const panels = groups.reduce((sum, group) => sum + group.panels, array.panels);
  const once = (words: readonly string[]): string => [...new Set(words)].join(' and ');
  const lying = planes.every((plane) => plane.tilt === 0) && summerTilt === null;
  const tilts = once([
    `${formatNumber(tilt, 0)}°${summerTilt === null ? '' : `, in summer ${formatNumber(summerTilt.tilt, 0)}°`}`,
    ...groups.map((group) => `${formatNumber(group.tilt, 0)}°`),
  ]);
  return [
    { part: 'panels', words: `${panels} panel${panels === 1 ? '' : 's'}` },
    {
      part: 'area',
      words:
        groups.length === 0
          ? `of ${formatQuantity(collector.area, 'area', units)}`
          : `in ${groups.length + 1} groups, ${formatQuantity(arrayArea(array), 'area', units)} in all`,
    },
    { part: 'tilt', words: lying ? 'lying flat' : `tilted ${tilts}` },
    { part: 'facing', words: lying ? '' : `facing ${once(planes.map((plane) => facingWords(plane.azimuth)))}` },
  ];
}

/** `80 gal tank`, or `40 gal and 30 gal tanks`, that of the house first. */
const tankWords = ({ second, volume }: SystemDesign['tank'], units: Units): string =>
  second === null
    ? `${formatQuantity(volume, 'volume', units)} tank`
    : `${formatQuantity(volume, 'volume', units)} and ${formatQuantity(second.volume, 'volume', units)} tanks`;

/**
 * Parts of a system's line.
 *
 * @param units - of the numbers
 * @param fuel - what the heater burns, where prices say so and the design does not
 */
export function systemParts(design: SystemDesign, units: Units, fuel = 'gas'): SystemPart[] {
  const { array, draw, heater, loop, tank } = design;
  return [
    ...roofParts(array, units),
    { part: 'tank', words: tankWords(tank, units) },
    { part: 'water', words: `${formatQuantity(draw.dailyVolume, 'volume', units)} of water a day` },
    { part: 'glycol', words: glycolWords(loop) },
    { part: 'heater', words: HEATERS[heater.kind](heater.fuel === null ? fuel : FUELS[heater.fuel].word) },
  ];
}

/** `2 panels of 30 ft², tilted 45°, facing south-south-west; 80 gal tank; 53 gal of water a day; 40 % glycol by volume; propane heater behind.` */
export function systemLine(design: SystemDesign, units: Units, fuel?: string): string {
  const { panels, area, tilt, facing, ...rest } = Object.fromEntries(
    systemParts(design, units, fuel).map(({ part, words }) => [part, words]),
  );
  const roof = [`${panels} ${area}`, tilt, facing].filter((words) => words !== '').join(', ');
  return `${[roof, ...Object.values(rest)].join('; ')}.`;
}

/** What several systems have in common, and what differs by part, `panels 2 / 3`. */
export function systemsLine(
  designs: readonly SystemDesign[],
  units: Units,
  fuel?: string,
): {
  /** What is the same in all. */
  readonly same: string;
  /** What differs, part by part. */
  readonly differs: string;
} {
  const all = designs.map((design) => systemParts(design, units, fuel));
  const same: string[] = [];
  const differs: string[] = [];
  all[0]!.forEach(({ words }, index) => {
    const each = all.map((parts) => parts[index]!.words);
    if (each.every((other) => other === words)) {
      if (words !== '') same.push(words);
    } else differs.push(each.map((one) => (one === '' ? '–' : one)).join(' / '));
  });
  return { same: same.join('; '), differs: differs.join('; ') };
}

/** A place that names nothing: `unknown, unknown`, `45, 8`, empty. */
const NAMELESS = /^[\s,.;:°+\-−\d/]*(?:(?:unknown|unnamed|n\/?a|none|-)[\s,;]*)*$/i;

/** `GREENSBORO PIEDMONT, NC` is easier read as `Greensboro Piedmont, NC`; names with small letters or numbers stay. */
const easeCapitals = (name: string): string =>
  /[\p{Ll}\d]/u.test(name)
    ? name
    : name.replace(/\p{Lu}[\p{Lu}’']+/gu, (word, at: number) =>
        word.length === 2 && /,\s*$/.test(name.slice(0, at)) ? word : word[0] + word.slice(1).toLowerCase(),
      );

/** Where the weather was taken: its name, or degrees in words. */
export function siteWords({ name, latitude, longitude }: Site): string {
  const plain = plainText(name);
  if (!NAMELESS.test(plain)) return easeCapitals(plain);
  const side = (value: number, plus: string, minus: string): string =>
    `${formatNumber(Math.abs(value), 1)}° ${value < 0 ? minus : plus}`;
  return `${side(latitude, 'N', 'S')}, ${side(longitude, 'E', 'W')}`;
}

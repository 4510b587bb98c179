/** What moves in a band, by how much, and where that is written. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemInput } from '../define/system-input.ts';
import type { SystemDesign } from '../design/design.ts';
import { monthlyMeans } from '../physics/calendar.ts';
import { mainsColumn } from '../physics/draw/mains.ts';
import { scaledLight } from '../physics/sun/scaled-light.ts';
import type { FieldSet } from './fields.ts';
import { setFields } from './paths.ts';

/** Causes of a band. */
export type BandPartName =
  | 'light'
  | 'sky-model'
  | 'dirt'
  | 'other-years'
  | 'optics'
  | 'collector-loss'
  | 'coil'
  | 'tank-loss'
  | 'cold-water'
  | 'water-use'
  | 'burner';

/** One cause, with its spread. */
export interface BandPart {
  /** Which. */
  readonly name: BandPartName;
  /** Standard deviation in the measure of its mover. */
  readonly deviation: number;
  /** Where the spread comes from: read, measured, computed, from memory, or judgement. */
  readonly source: string;
}

/** How the inputs are known. */
export interface KnownBy {
  readonly collector: 'certificate' | 'survey';
  readonly water: 'meter' | 'people' | 'unknown';
  readonly oneYear: boolean;
}

/** One thing that is moved: by so much in one or two years, and spread so in truth; 0 is the design as written. */
export interface Mover {
  readonly name: string;
  /** Two where the answer bends, for a parabola; one for a line. */
  readonly at: readonly number[];
  readonly mean: number;
  readonly deviation: number;
  /** Its measure on the curve, 0 at 0: a factor is written as its logarithm, and a line goes through the factor itself. */
  readonly scale: (at: number) => number;
  readonly parts: readonly BandPart[];
  /** Fields of the design, where it is the design that moves. */
  readonly fields?: (at: number) => FieldSet;
  /** Weather of those years, where it is the weather that moves. */
  readonly weathers?: readonly WeatherYear[];
}

/** Deviations off the middle at which those years stand: near the ends of a band of 90 %. */
const REACH = 1.5;
/** A share that exceeds what is possible is held there. */
const WHOLE = 0.99;

/** Light of all columns times a factor. A dim year loses mostly beam; that all columns fall alike is the simpler way. @internal */
const inLight = (weather: WeatherYear, factor: number): WeatherYear => scaledLight(weather, () => factor);

function lightMover(weather: WeatherYear, oneYear: boolean): Mover {
  const parts: BandPart[] = [
    { name: 'light', deviation: 0.05, source: 'long-term light 5 %: Thevenard & Pelland 2011 (abstract read)' },
    { name: 'sky-model', deviation: 0.03, source: 'plane of array 3 %: Thevenard & Pelland 2011 (abstract read)' },
    { name: 'dirt', deviation: 0.02, source: 'dirt on the glass 2 %: Thevenard & Pelland 2011 (abstract read)' },
  ];
  if (oneYear)
    parts.push({
      name: 'other-years',
      deviation: 0.04,
      source: 'light of one year 4 %: Thevenard & Pelland 2011, Toronto (abstract read)',
    });
  const deviation = Math.hypot(...parts.map((part) => part.deviation));
  const reach = REACH * deviation;
  return {
    name: 'light',
    at: [-reach, reach],
    mean: 0,
    deviation,
    scale: (at) => at,
    parts,
    weathers: [inLight(weather, 1 - reach), inLight(weather, 1 + reach)],
  };
}

/** One cause about the design as written, moved in the logarithm of a field. @param bent - Whether it takes a year to either side. */
function factorMover(part: BandPart, set: (factor: number) => FieldSet, { median = 1, bent = false } = {}): Mover {
  const mean = Math.log(median);
  const reach = REACH * part.deviation;
  return {
    name: part.name,
    at: bent ? [mean - reach, mean + reach] : [mean + reach],
    mean,
    deviation: part.deviation,
    scale: bent ? (at) => at : Math.expm1,
    parts: [part],
    fields: (at) => set(Math.exp(at)),
  };
}

const WATER: Record<KnownBy['water'], readonly [deviation: number, source: string]> = {
  meter: [0.12, 'a household whose litres are known, next year, 12 % (from memory)'],
  people: [0.45, 'between households of known size, ln 0.45 (from memory)'],
  unknown: [0.6, 'between dwellings, ln 0.6: Energy Saving Trust 2008 (survey read, figures from memory)'],
};

function useMover({ draw }: SystemDesign, water: KnownBy['water']): Mover {
  const [deviation, source] = WATER[water];
  const { volumes, weekdayFactors } = draw;
  return factorMover(
    { name: 'water-use', deviation, source },
    (factor) =>
      volumes === null
        ? { 'draw.weekdayFactors': weekdayFactors.map((value) => value * factor) }
        : { 'draw.volumes': volumes.map((value) => value * factor) },
    { bent: true },
  );
}

function collectorMovers({ array }: SystemDesign, known: KnownBy['collector']): Mover[] {
  const { eta0, a1 } = array.collector;
  const survey = known === 'survey';
  return [
    factorMover(
      {
        name: 'optics',
        deviation: survey ? 0.05 : 0.02,
        source: survey ? 'η0 of a survey 5 %: judgement' : 'η0 between laboratories 2 % (size from memory)',
      },
      (factor) => ({
        'array.collector.eta0': Math.min(eta0 * factor, WHOLE),
        'array.collector.eta0Basis': 'beam',
      }),
    ),
    factorMover(
      {
        name: 'collector-loss',
        deviation: survey ? 0.2 : 0.06,
        source: survey ? 'a1 of a survey 20 %: judgement' : 'a1 between laboratories 6 % (size from memory)',
      },
      (factor) => ({ 'array.collector.a1': a1 * factor }),
    ),
  ];
}

function tankMover({ tank, assumptions }: SystemDesign): Mover {
  const byDefault = assumptions.some(({ path }) => path === 'tank.lossCoefficient');
  return factorMover(
    {
      name: 'tank-loss',
      deviation: byDefault ? 0.25 : 0.07,
      source: byDefault
        ? 'loss from insulation alone, 1.4 times, ln 0.25 (from memory); one tank measured 1.3 times'
        : 'standing-loss test 7 % (from memory)',
    },
    (factor) => ({
      'tank.lossCoefficient': tank.lossCoefficient * factor,
      ...(tank.second === null ? {} : { 'tank.second.lossCoefficient': tank.second.lossCoefficient * factor }),
    }),
    { median: byDefault ? 1.4 : 1 },
  );
}

/** Mains of the design month by month, moved by so many kelvin. */
function mainsMover({ draw }: SystemDesign, weather: WeatherYear): Mover {
  const months = monthlyMeans(mainsColumn(draw.mains, weather));
  const deviation = draw.mains === 'from-weather' ? 1.5 : 1;
  const source =
    draw.mains === 'from-weather'
      ? 'correlation, mean of the year 1.5 K: measured in London +0.9 K'
      : 'temperatures given, 1 K: judgement';
  return {
    name: 'cold-water',
    at: [REACH * deviation],
    mean: 0,
    deviation,
    scale: (at) => at,
    parts: [{ name: 'cold-water', deviation, source }],
    fields: (at) => ({ 'draw.mains': months.map((value) => Math.min(Math.max(value + at, 0.5), 40)) }),
  };
}

/** A house with each cause moved so far, in the order of {@link movers}, and its weather. */
export function houseAt(
  base: SystemInput,
  weather: WeatherYear,
  list: readonly Mover[],
  at: readonly number[],
): { readonly design: SystemInput; readonly weather: WeatherYear } {
  const sets = list.map(({ fields }, cause) => fields?.(at[cause]!) ?? {});
  const light = list.findIndex(({ weathers }) => weathers !== undefined);
  return { design: setFields(base, Object.assign({}, ...sets)), weather: inLight(weather, 1 + at[light]!) };
}

/**
 * How well a design knows its water. Litres that somebody wrote, or a record, are taken at their word: the answer is for those litres, and what
 * may differ is the next year. People stand for litres that differ between such households; a tapping profile is nobody's.
 */
export function waterOf({ draw }: SystemInput): KnownBy['water'] {
  if (draw.volumes !== undefined || draw.dailyVolume !== undefined) return 'meter';
  return draw.people === undefined ? 'unknown' : 'people';
}

/** All that moves, in a fixed order. */
export function movers(design: SystemDesign, weather: WeatherYear, known: KnownBy): Mover[] {
  const { coil, heater, loop } = design;
  const list = [
    lightMover(weather, known.oneYear),
    ...collectorMovers(design, known.collector),
    tankMover(design),
    mainsMover(design, weather),
    useMover(design, known.water),
  ];
  if (loop.exchanger === 'coil')
    list.push(
      factorMover(
        { name: 'coil', deviation: 0.15, source: 'free convection and coiled tube 15 % (from memory)' },
        (factor) => ({ 'coil.length': coil.length * factor }),
      ),
    );
  if (heater.carrier === 'gas' || heater.carrier === 'fuel')
    list.push(
      factorMover(
        { name: 'burner', deviation: 0.04, source: 'seasonal efficiency 3 points (from memory)' },
        (factor) => ({ 'heater.burnerEfficiency': Math.min(heater.burnerEfficiency * factor, WHOLE) }),
      ),
    );
  return list;
}

import type { DesignAssumption, SystemDesign } from '../design/design.ts';
import { member } from '../input/check.ts';
import { DesignError, quote } from '../input/errors.ts';
import { HEATER_FIELD_KINDS } from './heater-field-kinds.ts';
import type { SystemInput } from './system-input.ts';

/** A design that was written out, as what one would have to write to get it. */
interface SavedDesign {
  readonly input: SystemInput;
  /** Its defaults with their sources, as they stood. */
  readonly assumptions: readonly DesignAssumption[];
}

/** Longest words of a saved default; those of this library are shorter. [characters] */
const LONGEST = 1000;

type Fields = Record<string, unknown>;
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether somebody hands in a design that was written out, or a copy of one by way of JSON: it lists its assumptions. */
const isSaved = (input: unknown): input is Fields => isFields(input) && Array.isArray(input.assumptions);

/**
 * Turns a design that `defineSystem` made, or its copy out of JSON, back into what one writes, so that it can be read again: every
 * value stays as it is, what follows from others by definition is left out. `null` for what people write.
 *
 * @throws DesignError where its list of defaults is no such list.
 */
export function readSaved(input: unknown): SavedDesign | null {
  if (!isSaved(input)) return null;
  const { assumptions: listed, baseline, ...design } = input;
  const assumptions = readAssumptions(listed as readonly unknown[]);
  const filled = new Set(assumptions.map(({ path }) => path));
  return {
    assumptions,
    input: {
      ...design,
      ...change(design, 'array', unsaveArray),
      ...change(design, 'loop', (loop) => unsaveLoop(loop, filled.has('loop.fillPressure'))),
      ...change(design, 'pump', (pump) => without(pump, isSet(pump.curves) ? RATED_POINT : ['startVoltage'])),
      ...change(design, 'pv', (pv) => ({ ...pv, ...change(pv, 'module', unsaveModule) })),
      ...change(design, 'draw', unsaveDraw),
      ...change(design, 'heater', (heater) => unsaveHeater(heater, baseline)),
    } as unknown as SystemInput,
  };
}

const change = (design: Fields, key: string, how: (part: Fields) => Fields): Fields =>
  isFields(design[key]) ? { [key]: how(design[key]) } : {};

const without = (fields: Fields, names: readonly string[]): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([name]) => !names.includes(name)));

/** With a4 the coefficient of the night sky is a4 itself. */
function unsaveArray(array: Fields): Fields {
  const { collector, groups } = array;
  const own =
    isFields(collector) && typeof collector.a4 === 'number' ? without(collector, ['skyCoefficient']) : collector;
  const further = Array.isArray(groups)
    ? groups.map((group) => (isFields(group) ? unsaveArray(group) : group))
    : groups;
  return { ...array, collector: own, ...(groups === undefined ? {} : { groups: further }) };
}

/** Follow from the curves of a measured pump. */
export const RATED_POINT = ['shutOffHead', 'openFlow', 'shutOffPower', 'openFlowPower'];
/** Follow from a module's measured points. */
export const PLATE = ['shortCircuitCurrent', 'openCircuitVoltage', 'maximumPowerCurrent', 'maximumPowerVoltage'];

const isSet = (value: unknown): boolean => value !== null && value !== undefined;

const unsaveModule = (module: Fields): Fields => (isSet(module.ivPoints) ? without(module, PLATE) : module);

/** Of the two pressures the one that was given, where neither is listed that at the collectors; without a loop of its own no exchanger. */
function unsaveLoop(loop: Fields, hasGauge: boolean): Fields {
  const follows = [
    hasGauge || loop.layout !== 'closed' ? 'fillPressure' : 'pressure',
    ...(loop.layout === 'direct' ? ['exchanger'] : []),
  ];
  const own = change(loop, 'plate', (plate) => (loop.layout === 'direct' ? without(plate, ['conductance']) : plate));
  return { ...without(loop, follows), ...own };
}

/** Of volume, record, profile and shares only what the others follow from. */
function unsaveDraw(draw: Fields): Fields {
  const { profile, keepsProfileHeat, volumes } = draw;
  const follows = ['keepsProfileHeat'];
  if (profile === null) follows.push('profile');
  else follows.push('hourlyShares');
  if (volumes === null) follows.push('volumes');
  else follows.push('dailyVolume', 'hourlyShares');
  if (keepsProfileHeat === true) follows.push('dailyVolume');
  return without(draw, follows);
}

/** Fields that the kind has no use for are 0, or the tank's room. */
function unsaveHeater(heater: Fields, baseline: unknown): Fields {
  const { kind } = heater;
  const unused = Object.keys(HEATER_FIELD_KINDS).filter((field) => !HEATER_FIELD_KINDS[field]!.includes(kind as never));
  const volume = member(baseline, 'volume');
  const own = without(heater, ['carrier', ...unused]);
  return (kind === 'element' || kind === 'boiler-coil') && volume !== undefined
    ? { ...own, baselineVolume: volume }
    : own;
}

/** A list of defaults as data of strangers: plain values and words, nothing else. */
function readAssumptions(list: readonly unknown[]): readonly DesignAssumption[] {
  const isText = (value: unknown, most: number) => typeof value === 'string' && value.length <= most;
  const isPlain = (value: unknown) =>
    value === null || typeof value === 'boolean' || Number.isFinite(value) || isText(value, 100 * LONGEST);
  const misfit = list.findIndex((one) => {
    const { path, value, unit, source } = (isFields(one) ? one : {}) as Fields;
    const isValue = isPlain(value) || (Array.isArray(value) && value.every((item) => typeof item === 'number'));
    return !(isText(path, 200) && isText(unit, 60) && isText(source, LONGEST) && isValue);
  });
  if (misfit < 0 && list.length <= LONGEST) {
    return list.map((one) => {
      const { path, value, unit, source } = one as DesignAssumption;
      return { path, value, unit, source };
    });
  }
  throw new DesignError([
    {
      path: misfit < 0 ? 'assumptions' : `assumptions.${misfit}`,
      found: quote(misfit < 0 ? list : list[misfit]),
      expected: 'defaults as defineSystem writes them out: path, value, unit, source',
      remedy: 'Leave "assumptions" and "baseline" out in a design that you write.',
    },
  ]);
}

/**
 * The defaults of a design that was read again: those of before that still hold, and those that a change by hand brought.
 *
 * @param before - As saved. @param now - Filled in just now. @param design - As it stands.
 */
export function keptAssumptions(
  before: readonly DesignAssumption[],
  now: readonly DesignAssumption[],
  design: Omit<SystemDesign, 'assumptions'>,
): DesignAssumption[] {
  const filled = new Set(now.map(({ path }) => path));
  const holds = ({ path, value }: DesignAssumption): boolean => {
    if (filled.has(path)) return false;
    const there = path.split('.').reduce<unknown>(member, design);
    // Two defaults, water a head and the store without the sun, have gone into other fields.
    if (there === undefined) return path === 'draw.volumePerPerson' || path === 'heater.baselineVolume';
    return JSON.stringify(there) === (isFields(there) || isListOfFields(there) ? value : JSON.stringify(value));
  };
  return [...before.filter(holds), ...now];
}

const isListOfFields = (value: unknown): boolean =>
  Array.isArray(value) && value.length > 0 && !value.every((item) => typeof item === 'number');

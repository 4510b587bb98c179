/** What a comparison says, in sentences made from its numbers. */
import { type Comparison, referenceIndex } from './compare.ts';
import { DEFINITIONS, type NumberKey } from './definitions.ts';
import { designChanges } from './design-changes.ts';
import { designUnit } from './design-units.ts';
import { cut, plainText } from './escape.ts';
import { formatDesignValue } from './quantities.ts';
import type { Summary } from './summary.ts';
import { displayUnit, formatNumber, formatQuantity, shownDifference, type Units } from './units.ts';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
const COUNTS = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const ordinal = (count: number): string => ORDINALS[count - 1] ?? `${count}th`;

/** How many changed fields a sentence names. */
const NAMED_CHANGES = 3;

function describeChanges(reference: Summary, summary: Summary, units: Units): string {
  const changes = designChanges(reference.design, summary.design);
  const named = changes.slice(0, NAMED_CHANGES).map(({ path, from, to }) => {
    const show = (value: unknown): string =>
      cut(plainText(formatDesignValue(value, designUnit(path), path, units)), 40);
    return `${path} ${show(from)} → ${show(to)}`;
  });
  const more = changes.length - named.length;
  if (changes.length === 0) return 'the same design';
  return named.join(', ') + (more > 0 ? ` and ${more} more` : '');
}

/** `The third panel`, when nothing else changed; otherwise the design by name with what changed. */
function subject(reference: Summary, summary: Summary, units: Units): string {
  const changes = designChanges(reference.design, summary.design);
  const from = reference.design.array.panels;
  const to = summary.design.array.panels;
  if (changes.length === 1 && changes[0]!.path === 'array.panels' && to > from)
    return to === from + 1 ? `The ${ordinal(to)} panel` : `Going from ${from} to ${to} panels`;
  return `“${cut(plainText(summary.design.name), 60)}” (${describeChanges(reference, summary, units)})`;
}

const name = (summary: Summary): string => `“${cut(plainText(summary.design.name), 60)}”`;

function movement(label: string, key: NumberKey, reference: Summary, summary: Summary, units: Units): string {
  const { kind } = DEFINITIONS[key];
  const [from, to] = [reference.year[key], summary.year[key]];
  if (from === null || to === null) return `${label} is not defined for both`;
  const difference = shownDifference(to, from, kind, units);
  if (difference === 0) return `${label} stays at ${formatQuantity(to, kind, units)}`;
  return `${label} ${difference > 0 ? 'rises' : 'falls'} from ${formatQuantity(from, kind, units)} to ${formatQuantity(to, kind, units)}`;
}

/** What each panel gives, when only their number changed. */
function perPanel(reference: Summary, summary: Summary, units: Units): string | null {
  const changes = designChanges(reference.design, summary.design);
  const before = reference.design.array.panels;
  const added = summary.design.array.panels - before;
  if (changes.length !== 1 || changes[0]!.path !== 'array.panels' || added <= 0) return null;
  const mean = reference.year.deliveredEnergy / before;
  const gain = (summary.year.deliveredEnergy - reference.year.deliveredEnergy) / added;
  if (!(mean > 0)) return null;
  const others = before === 1 ? 'The first panel delivers' : `The first ${COUNTS[before] ?? before} panels deliver`;
  return `${others} ${formatQuantity(mean, 'energy', units)}${before === 1 ? '' : ' each'}; ${added === 1 ? 'the added one gives' : 'each added one gives'} ${formatNumber((100 * gain) / mean, 0)} % of that.`;
}

/** `, 19 % less than the second did`: the panel before, where a design with one panel less is compared too. */
function againstPanelBefore(reference: Summary, summary: Summary, all: readonly Summary[]): string {
  const { panels } = reference.design.array;
  if (!onlyPanels(reference, summary) || summary.design.array.panels !== panels + 1) return '';
  const before = all.find((one) => one.design.array.panels === panels - 1 && onlyPanels(one, reference));
  if (before === undefined) return '';
  const gain = summary.year.deliveredEnergy - reference.year.deliveredEnergy;
  const gainBefore = reference.year.deliveredEnergy - before.year.deliveredEnergy;
  if (!(gainBefore > 0 && gain > 0)) return '';
  const percent = Math.round(100 * (gain / gainBefore - 1));
  if (percent === 0) return `, as much as the ${ordinal(panels)} did`;
  return `, ${formatNumber(Math.abs(percent), 0)} % ${percent < 0 ? 'less' : 'more'} than the ${ordinal(panels)} did`;
}

const onlyPanels = (from: Summary, to: Summary): boolean => {
  const changes = designChanges(from.design, to.design);
  return changes.length === 1 && changes[0]!.path === 'array.panels';
};

/** ` and about 61 h of stagnation`, where there is a difference. */
function addedStagnation(reference: Summary, summary: Summary, units: Units): string {
  const hours = shownDifference(summary.year.stagnationHours, reference.year.stagnationHours, 'hours', units);
  if (hours === 0) return '';
  return `, with about ${formatQuantity(Math.abs(hours), 'hours', units)} ${hours > 0 ? 'more' : 'less'} stagnation`;
}

function describePair(reference: Summary, summary: Summary, all: readonly Summary[], units: Units): string[] {
  const { symbol, digits } = displayUnit('energy', units);
  const gain = shownDifference(summary.year.deliveredEnergy, reference.year.deliveredEnergy, 'energy', units);
  const base = reference.year.deliveredEnergy;
  const share =
    base > 0 ? ` (${formatNumber((100 * (summary.year.deliveredEnergy - base)) / base, 1).replace('−', '')} %)` : '';
  const who = subject(reference, summary, units);
  const size = `${formatNumber(Math.abs(gain), digits)} ${symbol} a year${share}`;
  const delivered =
    gain === 0
      ? `${who} delivers the same energy as ${name(reference)}`
      : gain > 0
        ? `${who} adds ${size} to ${name(reference)}${againstPanelBefore(reference, summary, all)}`
        : `${who} delivers ${size} less than ${name(reference)}`;
  const move = (label: string, key: NumberKey): string => movement(label, key, reference, summary, units);
  const panels = perPanel(reference, summary, units);
  return [
    `${delivered}${addedStagnation(reference, summary, units)}; ${move('hot water by the sun', 'sunShare')}, ${move('fuel saved', 'fuelSaved')}.`,
    ...(panels === null ? [] : [panels]),
    `${move('Stagnation', 'stagnationHours')}, ${move('the peak tank temperature', 'peakTankTemperature')}, ${move('the hottest absorber', 'hottestAbsorber')}.`,
  ];
}

/**
 * Sentences about a comparison, each number in them taken from it.
 *
 * @param comparison - from {@link compareSummaries} or {@link compareRuns}
 * @param units - of the numbers in the sentences
 */
export function describeComparison(comparison: Comparison, units: Units = 'metric'): string[] {
  const { summaries, against } = comparison;
  const sentences = summaries.flatMap((summary, index) =>
    index === 0 ? [] : describePair(summaries[referenceIndex(index, against)]!, summary, summaries, units),
  );
  const sources = new Set(summaries.map((summary) => `${summary.site.name}\n${summary.weatherSource}`));
  if (sources.size > 1)
    sentences.push('The designs were run with different weather: part of each difference is the weather’s.');
  return sentences;
}

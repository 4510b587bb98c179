/** Words of a report: cautions, assumptions, limits and notes, each said once for all designs for which it holds. */
import type { GroupYear, RunResult, SecondTankYear } from '@noonloop/sim-core';
import type { Caution, CautionCode, CautionSeverity } from '../cautions/index.ts';
import { designUnit } from '../design-units.ts';
import { plainText } from '../escape.ts';
import { idleFields } from '../idle-fields.ts';
import { formatDesignValue } from '../quantities.ts';
import type { Summary } from '../summary.ts';
import { formatQuantity, type Units } from '../units.ts';
import { noticeWords } from '../words/notices.ts';
import { weatherNotes } from '../words/weather.ts';
import type { AssumptionLine, CautionGroup } from './types.ts';

/** Lines of all designs, each once; those that do not hold for all carry the letters of theirs. */
export function byDesign(linesOfRuns: readonly (readonly string[])[], letters: readonly string[]): string[] {
  const holders = new Map<string, string[]>();
  linesOfRuns.forEach((lines, index) => {
    for (const line of lines) holders.set(line, [...(holders.get(line) ?? []), letters[index]!]);
  });
  return [...holders].map(([line, of]) => (of.length === letters.length ? line : `${of.join(', ')}: ${line}`));
}

/** Defaults of all designs, but for fields that do nothing in them. */
export function assumptionLines(
  results: readonly RunResult[],
  letters: readonly string[],
  units: Units,
): AssumptionLine[] {
  const lines = new Map<string, { line: AssumptionLine; holders: string[] }>();
  results.forEach(({ design }, index) => {
    const idle = new Set(idleFields(design));
    for (const { path, value, unit, source } of design.assumptions) {
      if (idle.has(path)) continue;
      const shown = formatDesignValue(value, unit === '' ? designUnit(path) : unit, path, units);
      const key = JSON.stringify([path, shown, source]);
      const known = lines.get(key);
      if (known !== undefined) known.holders.push(letters[index]!);
      else lines.set(key, { line: { path, value: shown, source, designs: '' }, holders: [letters[index]!] });
    }
  });
  return [...lines.values()].map(({ line, holders }) => ({
    path: plainText(line.path),
    value: plainText(line.value),
    source: plainText(line.source),
    designs: holders.length === results.length ? '' : holders.join(', '),
  }));
}

const ORDER: readonly CautionSeverity[] = ['danger', 'warning', 'note'];

/** Cautions of all designs, one fault once: the gravest first, those without a finding of their own last. @param found - by design */
export function groupCautions(found: readonly (readonly Caution[])[], letters: readonly string[]): CautionGroup[] {
  const groups = new Map<CautionCode, (Caution | null)[]>();
  found.forEach((list, index) => {
    for (const caution of list) {
      const group = groups.get(caution.code) ?? letters.map(() => null);
      groups.set(caution.code, group);
      group[index] = caution;
    }
  });
  const merged = [...groups].map(([code, group]): CautionGroup => {
    const present = group.filter((one) => one !== null);
    const lines = (of: (caution: Caution) => string): string[] =>
      byDesign(
        group.map((one) => (one === null || of(one) === '' ? [] : [of(one)])),
        letters,
      );
    const gravest = Math.min(...present.map(({ severity }) => ORDER.indexOf(severity)));
    const advice = new Set(present.map((one) => one.advice));
    const { who, source } = present[0]!;
    return {
      code,
      severity: ORDER[gravest]!,
      short: lines(({ short }) => short),
      findings: lines(({ finding }) => finding),
      advice: advice.size === 1 ? [...advice][0]! : lines((one) => one.advice).join(' '),
      who,
      source,
    };
  });
  const rank = ({ severity, findings }: CautionGroup): number =>
    2 * ORDER.indexOf(severity) + (findings.length === 0 ? 1 : 0);
  return merged.sort((a, b) => rank(a) - rank(b));
}

/** Site and weather in one line. */
export function place(summary: Summary, units: Units): string {
  const { site, weatherSource } = summary;
  const side = (value: number, plus: string, minus: string): string =>
    `${Math.abs(value).toFixed(2)}° ${value < 0 ? minus : plus}`;
  const offset = `UTC${site.utcOffset < 0 ? '−' : '+'}${Math.abs(site.utcOffset)}`;
  return plainText(
    `${site.name}, ${side(site.latitude, 'N', 'S')} ${side(site.longitude, 'E', 'W')}, ${formatQuantity(site.elevation, 'length', units)} above the sea, times in ${offset}; weather: ${weatherSource}`,
  );
}

/** The limits by which hours are counted. */
export function limits(results: readonly RunResult[], letters: readonly string[], units: Units): string[] {
  return byDesign(
    results.map(({ stagnationLimit, sunThreshold }) => [
      `Stagnation counts from an absorber above ${formatQuantity(stagnationLimit, 'temperature', units)}, sun from ${formatQuantity(sunThreshold, 'irradiance', units)} on the collectors.`,
    ]),
    letters,
  );
}

/** What one group of collectors gave. */
const groupWords = ({ area, heat, irradiation, name }: GroupYear, units: Units): string =>
  `Collectors "${name}", ${formatQuantity(area, 'area', units)}, gave the loop ${formatQuantity(heat, 'energy', units)}, ${formatQuantity(irradiation > 0 ? heat / irradiation : 0, 'fraction', units)} of their light.`;

/** What is whose where there are two tanks, and what the second did. */
function secondTankWords({ balance, columns, peak, peakOfFirst }: SecondTankYear, units: Units): string {
  const total = (column: Float64Array): string =>
    formatQuantity(
      column.reduce((sum, value) => sum + value, 0),
      'energy',
      units,
    );
  const degrees = (value: number): string => formatQuantity(value, 'temperature', units);
  const given = `It got ${total(columns.coilHeat)} from its coil, lost ${total(columns.loss)} to its room and held ${formatQuantity(balance.stored, 'energy', units)} more at the year’s end.`;
  return `There are two solar tanks: the mains enter the second, which feeds the first. Heat, losses and relief are of both, the hottest is of the hotter; top, bottom and layers are the first’s. ${given} It was ${degrees(peak)} at most, the first ${degrees(peakOfFirst)}.`;
}

/** What each group gave; what reader and run assumed, clamped or left out. */
export function notes(results: readonly RunResult[], letters: readonly string[], units: Units): string[] {
  return byDesign(
    results.map((result) => [
      ...(result.groups ?? []).map((group) => plainText(groupWords(group, units))),
      ...(result.secondTank === undefined ? [] : [plainText(secondTankWords(result.secondTank, units))]),
      ...weatherNotes(result, units).map(plainText),
      ...result.notices.map((notice) => `${plainText(noticeWords(notice, units))} (${notice.hours} h)`),
    ]),
    letters,
  );
}

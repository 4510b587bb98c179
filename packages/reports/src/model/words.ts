/** Words of a report: cautions, assumptions, limits and notes, each said once for all designs for which it holds. */
import type { RunResult } from '@noonloop/sim-core';
import { type CautionSeverity, cautions } from '../cautions/index.ts';
import { designUnit } from '../design-units.ts';
import { plainText } from '../escape.ts';
import { convertSentence, formatDesignValue } from '../quantities.ts';
import type { Summary } from '../summary.ts';
import { formatQuantity, type Units } from '../units.ts';
import type { AssumptionLine, CautionGroup } from './types.ts';

/** Lines of all designs, each once; those that do not hold for all carry the letters of theirs. */
export function byDesign(linesOfRuns: readonly (readonly string[])[], letters: readonly string[]): string[] {
  const holders = new Map<string, string[]>();
  linesOfRuns.forEach((lines, index) => {
    for (const line of lines) holders.set(line, [...(holders.get(line) ?? []), letters[index]!]);
  });
  return [...holders].map(([line, of]) => (of.length === letters.length ? line : `${of.join(', ')}: ${line}`));
}

/** Defaults of all designs. */
export function assumptionLines(
  results: readonly RunResult[],
  letters: readonly string[],
  units: Units,
): AssumptionLine[] {
  const lines = new Map<string, { line: AssumptionLine; holders: string[] }>();
  results.forEach(({ design }, index) => {
    for (const { path, value, unit, source } of design.assumptions) {
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
    source: convertSentence(plainText(line.source), units),
    designs: holders.length === results.length ? '' : holders.join(', '),
  }));
}

/** Cautions of all designs, the gravest first, the general ones last. */
export function groupCautions(results: readonly RunResult[], letters: readonly string[], units: Units): CautionGroup[] {
  const groups = new Map<string, { severity: CautionSeverity; advice: string; source: string; findings: string[][] }>();
  results.forEach((result, index) => {
    for (const { code, severity, finding, advice, source } of cautions(result, units)) {
      const key = JSON.stringify([code, severity, advice]);
      const group = groups.get(key) ?? { severity, advice, source, findings: letters.map(() => []) };
      groups.set(key, group);
      group.findings[index] = finding === '' ? [] : [finding];
    }
  });
  const order: readonly CautionSeverity[] = ['danger', 'warning', 'note'];
  const merged = [...groups.values()].map((group) => ({ ...group, findings: byDesign(group.findings, letters) }));
  const own = merged.filter(({ findings }) => findings.length > 0);
  const general = merged.filter(({ findings }) => findings.length === 0);
  return [...own.sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity)), ...general];
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

/** What reader and run assumed, clamped or left out. */
export function notes(results: readonly RunResult[], letters: readonly string[], units: Units): string[] {
  return byDesign(
    results.map(({ weatherAssumptions, notices }) => [
      ...weatherAssumptions.map((text) => convertSentence(plainText(text), units)),
      ...notices.map(({ text, hours }) => `${convertSentence(plainText(text), units)} (${hours} h)`),
    ]),
    letters,
  );
}

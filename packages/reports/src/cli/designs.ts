// Design files to designs.
import { dirname, resolve } from 'node:path';
import type { SystemDesign, SystemInput } from '@noonloop/sim-core';
import type { DrawLayout, DrawRecord } from '@noonloop/weather-io';
import { EXIT, Refusal } from './exit-codes.ts';
import { checked } from './settings/check.ts';
import { readSettings, type Settings, tableSettings } from './settings-file.ts';

/** A record of water used, by a file that names the table (`file`, beside it) and its layout. */
export async function drawOf(path: string): Promise<DrawRecord> {
  const { readDraw } = await import('@noonloop/weather-io');
  const settings = await readSettings(path);
  return checked(settings, 'meter', () => {
    const { file, ...layout } = tableSettings(settings);
    return readDraw(resolve(dirname(path), file), layout as unknown as DrawLayout);
  });
}

/** Reads a design file; a record of water stands in for its draw. */
export async function designOf(path: string, record: DrawRecord | null = null): Promise<SystemDesign> {
  return (await writtenDesign(path, record)).design;
}

/** A design and what somebody wrote to get it: for what changes fields and lets the defaults follow. */
export async function writtenDesign(
  path: string,
  record: DrawRecord | null = null,
): Promise<{ readonly design: SystemDesign; readonly input: SystemInput; readonly settings: Settings }> {
  const { defineSystem } = await import('./core.ts');
  const settings = outOfReport(await readSettings(fileOf(path)), path);
  return checked(settings, 'design', (fields) => {
    const input = { ...fields } as unknown as SystemInput;
    const withRecord =
      record === null ? input : { ...input, draw: { ...drawFields(input.draw, settings), volumes: record.volumes } };
    return { design: defineSystem(withRecord as SystemInput), input: withRecord as SystemInput, settings };
  });
}

const PLACE = /#(\d+)$/;

/** `report.json#2` is the second design of a report. */
const fileOf = (path: string): string => path.replace(PLACE, '');

/** A report in JSON holds its designs: what stands in it is taken out. */
function outOfReport(settings: Settings, path: string): Settings {
  const { value } = settings;
  if (typeof value !== 'object' || value === null || !('schema' in value) || value.schema !== 'noonloop-report')
    return settings;
  const runs = 'runs' in value && Array.isArray(value.runs) ? (value.runs as { design?: unknown }[]) : [];
  const asked = PLACE.exec(path)?.[1];
  const index = asked === undefined ? 0 : Number(asked) - 1;
  if (runs[index]?.design === undefined || (asked === undefined && runs.length > 1)) {
    const words = `this report holds ${runs.length} designs. Say which: ${fileOf(path)}#1 is the first.`;
    throw new Refusal(EXIT.input, [`${fileOf(path)}: ${words}`]);
  }
  const before = `runs.${index}.design`;
  return {
    path: settings.path,
    value: runs[index].design,
    lineOf: (field) => settings.lineOf(field === '' ? before : `${before}.${field}`),
  };
}

/** What else a design says of its draw; the record stands in for how much and when. */
function drawFields(draw: unknown, { path, lineOf }: Settings): object {
  if (draw === undefined || draw === null) return {};
  if (typeof draw !== 'object' || Array.isArray(draw))
    throw new Refusal(EXIT.input, [
      `${path}, line ${lineOf('draw') ?? 1}, draw: expected fields such as tapTemperature.`,
    ]);
  const { dailyVolume, people, volumePerPerson, profile, hourlyShares, keepsProfileHeat, ...rest } = draw as Partial<
    Record<string, unknown>
  >;
  // Only a design that was written out has it, and only then must the other names be there.
  return keepsProfileHeat === undefined
    ? rest
    : { ...rest, dailyVolume, hourlyShares, profile: null, keepsProfileHeat: false };
}

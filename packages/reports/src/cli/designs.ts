// Design files to designs.
import { dirname, resolve } from 'node:path';
import type { SystemDesign, SystemInput } from '@noonloop/sim-core';
import type { DrawLayout, DrawRecord } from '@noonloop/weather-io';
import { EXIT, Refusal } from './exit-codes.ts';
import { blaming, blamingLayout } from './in-words.ts';
import { asMap, readSettings, type Settings, tableSettings } from './settings-file.ts';

/** A record of water used, by a file that names the table (`file`, beside it) and its layout. */
export async function drawOf(path: string): Promise<DrawRecord> {
  const { readDraw } = await import('@noonloop/weather-io');
  const settings = await readSettings(path);
  const { file, ...layout } = tableSettings(settings);
  return blamingLayout(settings, () => readDraw(resolve(dirname(path), file), layout as unknown as DrawLayout));
}

/** Reads a design file; a record of water stands in for its draw. */
export async function designOf(path: string, record: DrawRecord | null): Promise<SystemDesign> {
  const { defineSystem } = await import('@noonloop/sim-core');
  const settings = await readSettings(path);
  const input = asMap(settings);
  if (record !== null) input.draw = { ...drawFields(input.draw, settings), volumes: record.volumes };
  return blaming(settings, () => defineSystem(input as unknown as SystemInput));
}

function drawFields(draw: unknown, { path, lineOf }: Settings): object {
  if (draw === undefined || draw === null) return {};
  if (typeof draw === 'object' && !Array.isArray(draw)) return draw;
  throw new Refusal(EXIT.input, [
    `${path}, line ${lineOf('draw') ?? 1}, draw: expected fields such as tapTemperature.`,
  ]);
}

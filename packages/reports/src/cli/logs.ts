// A notebook of gauge readings and what is known beside it.
import { dirname, resolve } from 'node:path';
import type { CheckLogOptions } from '@noonloop/sim-core';
import type { GaugeLog, LogLayout } from '@noonloop/weather-io';
import { checked } from './settings/check.ts';
import { readSettings, type Settings, tableSettings } from './settings-file.ts';

/** Readings, with what is known of house and gauges. */
interface Notebook {
  readonly settings: Settings;
  readonly log: GaugeLog;
  readonly known: Pick<CheckLogOptions, 'uncertainty' | 'noise'>;
}

/** Reads the table that a settings file names. */
export async function notebookOf(path: string): Promise<Notebook> {
  const { readLog } = await import('@noonloop/weather-io');
  const settings = await readSettings(path);
  return checked(settings, 'log', async () => {
    const { file, uncertainty, noise, ...layout } = tableSettings(settings);
    const log = await readLog(resolve(dirname(settings.path), file), layout as unknown as LogLayout);
    const known = { ...(uncertainty ? { uncertainty } : {}), ...(noise ? { noise } : {}) } as Notebook['known'];
    return { settings, log, known };
  });
}

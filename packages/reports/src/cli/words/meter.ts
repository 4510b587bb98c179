// A record of water used, looked over.

import { withUnit } from '../../shown-units.ts';
import { weatherWords } from '../../words/weather.ts';
import { drawOf } from '../designs.ts';
import { listOf, sentences, table } from '../sheet/model.ts';
import { yamlLines } from '../sheet/yaml-lines.ts';
import type { Word } from '../word.ts';

/** What the house draws by its own meter. */
export const meter: Word = {
  usage: 'meter <record>',
  summary: 'what your own meter says about the hot water',
  description:
    'Reads a record of hot water, a YAML or JSON file that names the table and its layout, and says how much is drawn in a day and at which hours. The mean day comes as lines for a design too; "run --draw" takes the record itself.',
  example: 'noonloop meter meter.yaml --units us',
  formats: ['yaml'],
  run: async ({ files, units }) => {
    const record = await drawOf(files[0]!);
    const { volumes, partsPerHour, yearVolume, fileVolume, span, assumptions, source } = record;
    const hours = new Array<number>(24).fill(0);
    const days = new Array<number>(7).fill(0);
    volumes.forEach((value, at) => {
      const hour = Math.trunc(at / partsPerHour);
      hours[hour % 24]! += value / 365;
      days[Math.trunc(hour / 24) % 7]! += value;
    });
    const dailyVolume = yearVolume / 365;
    const lines = { draw: { dailyVolume, hourlyShares: hours.map((value) => value / Math.max(dailyVolume, 1e-12)) } };
    return {
      sheet: {
        title: source,
        blocks: [
          sentences(
            `${withUnit(dailyVolume, 'm³', units)} of hot water on a mean day; ${withUnit(fileVolume, 'm³', units)} in the file, a ${span}.`,
          ),
          table(
            'hours',
            [{ label: 'from' }, { label: 'mean day', unit: 'm³' }],
            hours.map((value, hour) => [`${String(hour).padStart(2, '0')}:00`, value]),
          ),
          table(
            'weekdays',
            [{ label: 'weekday, the first being 1 January’s' }, { label: 'mean', unit: 'm³' }],
            days.map((value, day) => [`${day + 1}`, value / Math.ceil((365 - day) / 7)]),
          ),
          ...listOf(
            'What was assumed',
            assumptions.map((note) => weatherWords(note, units)),
          ),
        ],
      },
      data: { ...record, volumes: undefined, dailyVolume, hourlyVolumes: hours },
      formats: { yaml: () => yamlLines(lines) },
    };
  },
};

// Ice at the site: what the fluid in the design stands, and what it would take.
import type { FreezeReport } from '@noonloop/sim-core';
import { formatHour } from '../../calendar.ts';
import { withUnit } from '../../shown-units.ts';
import { adviceInWords } from '../../words/advice.ts';
import { designOf } from '../designs.ts';
import { quantityOption } from '../option-values.ts';
import { cautionBlocks, listOf, sentences, table } from '../sheet/model.ts';
import { weatherOf } from '../weather.ts';
import { type Word, weatherOptions } from '../word.ts';

/** Glycol by mass that the table shows. */
const SHARES = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6];

/** Freezing and glycol. */
export const freezing: Word<{ readonly margin?: string }> = {
  usage: 'freezing <design>',
  summary: 'will it freeze here, and how much glycol does it take',
  description:
    'Looks for the coldest hour that collectors and outdoor pipes meet, the night sky included; says by how much the design’s fluid stays above its freezing point, and the share of glycol that the site wants.',
  example: 'noonloop freezing house.yaml --weather town.csv --margin "5 K"',
  formats: [],
  needs: ['weather'],
  options: (command) =>
    weatherOptions(command).option('--margin <difference>', 'freezing point below the coldest hour (default: 5 K)'),
  run: async ({ files, options, units, progress }) => {
    const { freezeAtSite, glycolForSite } = await import('@noonloop/sim-core');
    const design = await designOf(files[0]!);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    const isWater = design.loop.fluid === 'water';
    const now = freezeAtSite(design, weather);
    const margin = options.margin === undefined ? {} : { margin: quantityOption(options.margin) };
    const share = isWater ? null : glycolForSite(design, weather, margin);
    const shares = isWater ? [] : SHARES.map((mass) => ({ mass, ...freezeAtSite(design, weather, mass) }));
    const percent = (part: number) => `${(100 * part).toFixed(0)} %`;
    const named = isWater ? 'water' : `${percent(design.loop.glycolMassFraction)} of glycol by mass`;
    return {
      sheet: {
        title: `Freezing of ${design.name}`,
        blocks: [
          sentences(verdictOf(now, named, units)),
          sentences(
            `The coldest hour is ${formatHour(now.coldestHour)}: ${withUnit(now.coldest, '°C', units)} at the coldest part, ${withUnit(now.coldestAir, '°C', units)} in the air.`,
          ),
          ...(share === null
            ? []
            : [
                sentences(
                  `The site wants ${percent(share.volumeFraction)} by volume (${percent(share.massFraction)} by mass), ${withUnit(share.glycolVolume, 'm³', units)} of glycol in ${withUnit(share.loopVolume, 'm³', units)}: first ice at ${withUnit(share.freezingPoint, '°C', units)}, no burst pipe down to ${withUnit(share.burstPoint, '°C', units)}.`,
                ),
                table(
                  'shares',
                  [
                    { label: 'glycol by mass', unit: '%' },
                    { label: 'first ice', unit: '°C' },
                    { label: 'hours as ice', unit: 'h' },
                    { label: 'of them by the sky alone', unit: 'h' },
                    { label: 'too cold by', unit: 'K' },
                    { label: 'hours below bursting', unit: 'h' },
                  ],
                  shares.map((row) => [
                    row.mass,
                    row.freezingPoint,
                    row.hoursBelowFreezing,
                    row.hoursBySky,
                    row.deepestBelowFreezing,
                    row.hoursBelowBurst,
                  ]),
                ),
                { kind: 'working' as const, title: 'Working of the share', steps: share.steps },
                ...listOf('Look at', adviceInWords(share.notes, units)),
              ]),
          ...cautionBlocks(adviceInWords(now.cautions, units)),
        ],
      },
      data: { design: now, share, shares },
    };
  },
};

function verdictOf(now: FreezeReport, named: string, units: 'metric' | 'us'): string {
  const spare = now.coldest - now.freezingPoint;
  const said = withUnit(Math.abs(spare), 'K', units);
  const point = withUnit(now.freezingPoint, '°C', units);
  if (spare >= 0) return `With ${named} it stays liquid: first ice at ${point}, ${said} below the coldest hour.`;
  const burst =
    now.hoursBelowBurst > 0 ? ` Pipes may split in ${now.hoursBelowBurst} h of them.` : ' No pipe is to split yet.';
  return `With ${named} it freezes: first ice at ${point}, and ${now.hoursBelowFreezing} h of the year are colder, by up to ${said}.${burst}`;
}

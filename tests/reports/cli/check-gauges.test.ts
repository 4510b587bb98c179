// check-log without weather: a logger's invented readings, an hour's command in all its formats. Rules and rates: tests/sim-core/advice/gauges.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, example, ownFolder } from './command.ts';

const folder = ownFolder();
const log = join(folder, 'log.yaml');
const rows = Array.from({ length: 10 * 48 }, (_, at) => {
  const clock = (at % 48) / 2;
  const time = `2023-07-${String(1 + Math.floor(at / 48)).padStart(2, '0')} ${String(Math.floor(clock)).padStart(2, '0')}:${at % 2 ? '30' : '00'}`;
  const sunny = Math.max(0, 1 - ((clock - 12) / 4) ** 2);
  // From the tank at night: nothing else makes a roof 38 °C at 2 h.
  const collector = clock < 5 ? 38 : 20 + clock / 10 + 40 * sunny;
  return `${time},${collector.toFixed(1)},${(45 + 5 * sunny).toFixed(1)},${sunny > 0.4 ? 60 : 0}`;
});
writeFileSync(join(folder, 'logger.csv'), `when,collector,tank,pump\n${rows.join('\n')}\n`);
writeFileSync(
  log,
  `file: logger.csv
time: { timestamp: when }
columns:
  collectorTemperature: { column: collector, unit: degC }
  tankTopTemperature: { column: tank, unit: degC }
  pumpSpeed: { column: pump, unit: '%' }
`,
);

describe('check-log without weather [requirement]', () => {
  it('says what the gauges show, what they cannot tell, and who may act', async () => {
    const { exit, out } = await command(['check-log', '--log', log]);
    expect(exit).toBe(0);
    expect(out).toMatch(/^Gauges by themselves\n\nFound by the gauges alone, in 10 days: a check valve that leaks/);
    expect(out).toMatch(/On 10 of 10\s+nights/);
    expect(out).toContain('caution: Pipes near the tank scald');
    expect(out).toMatch(/- The tank’s bottom was not logged/);
    expect(out).toMatch(/not an inspection/);
  });

  it('as data with its words, and in US units with the design’s name', async () => {
    const { out } = await command(['check-log', example('design-files/two-panels.yaml'), '--log', log, '--json']);
    const { verdict, findings, words } = JSON.parse(out);
    expect(verdict).toBe('night-circulation');
    expect(findings[0]).toMatchObject({ since: null, days: 10, of: 10, evidence: { code: 'warm-at-night' } });
    expect(words.findings[0].evidence).toMatch(/by 13 K in the middle/);
    const us = await command(['check-log', example('design-files/two-panels.yaml'), '--log', log, '-u', 'us']);
    expect(us.out).toMatch(/^two panels\n/);
    expect(us.out).toMatch(/by 23 °F/);
  });

  it('refuses a picture, and a notebook by hand, with the remedy', async () => {
    const picture = await command(['check-log', '--log', log, '--picture', '-']);
    expect(picture.exit).toBe(2);
    expect(picture.err).toMatch(/Say --weather/);
    writeFileSync(
      join(folder, 'logger.csv'),
      'when,collector,tank,pump\n2023-07-01 08:00,30,50,0\n2023-07-09 08:00,30,50,0\n',
    );
    const few = await command(['check-log', '--log', log]);
    expect(few.exit).not.toBe(0);
    expect(few.err).toMatch(/expected readings every 30 minutes or closer\. Take a data logger/);
    const needs = await command(['check-log', '--log', log, '-w', example('weather/invented-valley.csv')]);
    expect(needs.err).toMatch(/needs a design/);
  });
});

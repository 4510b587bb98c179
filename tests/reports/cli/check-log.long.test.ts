import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, example, ownFolder } from './command.ts';

describe('check-log of the command [requirement]', () => {
  it('writes words or a page to a file and the picture to standard output, in the units that are asked for', async () => {
    const folder = ownFolder();
    const log = join(folder, 'log.yaml');
    const days = ['01,07:30,41', '01,12:30,60', '02,18:00,96', '03,07:30,58', '03,18:00,70'];
    writeFileSync(join(folder, 'readings.csv'), `date,time,tank top\n2023-07-${days.join('\n2023-07-')}\n`);
    writeFileSync(
      log,
      'file: readings.csv\ntime: { date: date, clock: time }\ncolumns:\n  tankTopTemperature: { column: tank top, unit: degC }\n',
    );
    const files = [example('design-files/two-panels.yaml'), '-w', example('weather/invented-valley.csv'), '--log', log];
    const said = join(folder, 'log.txt');
    const { exit, out } = await command([
      'check-log',
      ...files,
      '-u',
      'us',
      '--out',
      said,
      '--picture',
      '-',
      '--quiet',
    ]);
    expect(exit).toBe(0);
    expect(readFileSync(said, 'utf8')).toMatch(/line 4, Tank top: 204\.8 against [\d.]+ to [\d.]+ °F/); // 96 °C
    expect(out).toMatch(/^<svg .*Tank top \[°F\].*>two panels<\/text>/s);
    // Words and picture may not both have standard output: the picture has it alone.
    const metric = await command(['check-log', ...files, '--picture', '-', '--quiet']);
    expect(metric.out).toMatch(/^<svg .*Tank top \[°C\].*<\/svg>\n$/s);
    const page = join(folder, 'log.html');
    expect((await command(['check-log', ...files, '--out', page])).err).toContain('written: ');
    expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>.*<h1>two panels<\/h1>/s);
  });
});

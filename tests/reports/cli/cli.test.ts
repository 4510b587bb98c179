import { spawnSync } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { renderText } from '@noonloop/reports';
import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { DRAFTS } from '../../../packages/reports/src/cli/drafts/index.ts';
import { Refusal } from '../../../packages/reports/src/cli/exit-codes.ts';
import { forgetAll, writeWhole } from '../../../packages/reports/src/cli/files.ts';
import { namesApart } from '../../../packages/reports/src/cli/names-apart.ts';
import { formatOf } from '../../../packages/reports/src/cli/output.ts';
import type { Terminal } from '../../../packages/reports/src/cli/terminal.ts';
import { settingsOf } from '../../../packages/reports/src/cli/words/run.ts';
import { inventedValley, yearOf } from '../../examples.ts';
import { command, example, ownFolder } from './command.ts';

const weather = example('weather/invented-valley.csv');
const two = example('design-files/two-panels.yaml');
const three = example('design-files/three-panels.yaml');
const folder = ownFolder();
const inFolder = (name: string, text?: string): string => {
  const path = join(folder, name);
  if (text !== undefined) writeFileSync(path, text);
  return path;
};
const run = (design: string, ...more: string[]) => command(['run', design, '--weather', weather, ...more]);

/** What the library says of the first example. */
const libraryYear = async () =>
  yearOf(defineSystem(parse(readFileSync(two, 'utf8')) as SystemInput), await inventedValley());

describe('run and compare', () => {
  it('prints what the library says, to standard output alone, under a title, a client, a date and a note [requirement]', async () => {
    const head = { title: 'Hill house', client: 'M. Hill', date: '12 May 2026', note: 'Roof checked on 3 May.' };
    const expected = renderText(await libraryYear(), { width: 80, ...head });
    const words = Object.entries(head).flatMap(([name, value]) => [`--${name}`, value]);
    const { exit, out, err } = await run(two, ...words);
    expect(exit).toBe(0);
    expect(out.trimEnd()).toBe(expected.trimEnd());
    expect(out).toMatch(/for M\. Hill · 12 May 2026/);
    expect(err).toContain('note: two panels: Fluid boiled');
    expect(err).not.toContain('\u001b'); // nobody watches
  });

  it('hands to the report what was asked for, and ranges where they were found [requirement; thirty years to the letter: how-sure.long.test.ts]', () => {
    const call = { units: 'metric', terminal: { width: 80 } as Terminal } as const;
    const found = [{}];
    expect(settingsOf({ ...call, options: {} }, found, {})).toEqual({ units: 'metric', width: 80, bands: found });
    expect(settingsOf({ ...call, options: { hours: true } }, [], {})).toEqual({
      units: 'metric',
      width: 80,
      hours: true,
    });
  });

  it('takes the format that is said, else that of the ending [definition]', () => {
    const endings = ['a.HTML', 'a.htm', 'a.md', 'a.markdown', 'a.csv', 'a.json', 'a.txt', '-', undefined];
    const formats = ['html', 'html', 'md', 'md', 'csv', 'json', 'text', 'text', 'text'];
    expect(endings.map((out) => formatOf(undefined, out))).toEqual(formats);
    expect(formatOf('csv', 'a.html')).toBe('csv');
  });

  it('an option for another format is refused, not passed over [requirement]', async () => {
    const refused = async (...words: string[]) => (await run(two, ...words)).err;
    expect(await refused('--detail', 'short', '--out', 'x.html')).toMatch(/--detail is for text; this report is html/);
    expect(await refused('--table', 'hours')).toMatch(/--table is for csv; this report is text/);
    expect(await refused('--json', '--format', 'csv')).toMatch(/--json and --format say two things/);
  });

  it('sets designs side by side, ranked, as a file in US units, those of one name called by what differs; quiet [requirement]', async () => {
    const other = inFolder('other.yaml');
    await command(['change', two, 'array.panels=4', 'tank.volume=400 L', '--out', other]);
    const path = inFolder('two.md');
    const words = ['--units', 'us', '--rank-by', 'deliveredEnergy', '--against', 'previous', '--out', path, '--quiet'];
    const { exit, out, err } = await command(['compare', two, other, '--weather', weather, ...words]);
    expect([exit, out, err]).toEqual([0, '', '']);
    const text = readFileSync(path, 'utf8');
    expect(text).toMatch(/^# /);
    expect(text).toContain('two panels, array.panels 2, tank.volume 79.25 gal');
    expect(text).toContain('two panels, array.panels 4, tank.volume 105.7 gal');
    expect(text).toContain('°F');
    expect(text.toLowerCase()).toContain('rank');
  });

  it('a name that one design alone bears stays as it is [requirement]', async () => {
    const designs = [two, three, two].map((path) => defineSystem(parse(readFileSync(path, 'utf8')) as SystemInput));
    const larger = { ...designs[2]!, tank: { ...designs[2]!.tank, volume: 0.4 } };
    expect(namesApart([designs[0]!, designs[1]!, larger], 'metric').map(({ name }) => name)).toEqual([
      'two panels, tank.volume 300 L',
      'three panels',
      'two panels, tank.volume 400 L',
    ]);
  });

  it('takes your own meter and your prices [requirement]', async () => {
    const design = inFolder(
      'metered.yaml',
      readFileSync(two, 'utf8')
        .replace(/draw:\n {2}people: 4/, 'draw:')
        .replace(/ {2}holidays.*\n/, ''),
    );
    const { exit, out } = await run(
      design,
      ...[
        '--draw',
        example('settings/own-meter.yaml'),
        '--prices',
        example('settings/prices.yaml'),
        '--format',
        'json',
      ],
    );
    expect(exit).toBe(0);
    const [{ year, money, weatherAssumptions }] = JSON.parse(out).runs;
    expect(year.tapVolume_m3).toBeCloseTo(83.954, 6); // as docs/examples/own-draw.ts
    expect(money.currency).toBe('EUR');
    expect(weatherAssumptions.join()).toContain('invented-meter.csv: The meter went round');
  });
});

describe('faults in plain words: file, line, field; exit code [requirement]', () => {
  const plain = `name: house
array:
  panels: 2
  tilt: 40
  azimuth: 180
  collector: { area: 2 m2, eta0: 0.7, a1: 3, a2: 0.01 }
tank:
  volume: 300 L
draw:
  people: 4
`;

  it.each<[string, string, RegExp]>([
    [
      'a value',
      plain.replace('300 L', 'big'),
      /line 8, tank\.volume: found "big", expected a value from 0\.02 to 50 m³/,
    ],
    ['inside braces', plain.replace('2 m2', '-1'), /line 6, array\.collector\.area: found -1/],
    ['a misspelt field', plain.replace('volume:', 'volumne:'), /line 8, tank\.volumne: found a field of this name/],
    [
      'a field that is not there',
      plain.replace('  people: 4', '  tapTemperature: 45'),
      /line 9, draw\.dailyVolume: found nothing/,
    ],
    [
      'a tab',
      plain.replace('  volume', '\tvolume'),
      /line 8, column 1: found a tab at the start of the line, expected spaces\. Use spaces\./,
    ],
    ['a field twice', `${plain}tank: {}\n`, /line 11, column 1: found "tank" a second time/],
    ['a bracket open', plain.replace(' }', ''), /line \d+, column \d+: /],
    ['a tag', plain.replace('300 L', '!!js/function "x"'), /line 8.*found a tag/],
    ['no map', 'just words', /expected fields with values/],
    ['nothing', '', /expected fields with values/],
  ])('YAML: %s', async (_, text, words) => {
    const path = inFolder('bad.yaml', text);
    const { exit, out, err } = await run(path);
    expect([exit, out]).toEqual([1, '']);
    expect(err).toMatch(words);
    expect(err.startsWith(`noonloop: ${path}`)).toBe(true);
    expect(err).not.toMatch(/ {4}at |Error:/);
  });

  it('JSON: the line of a field, and of a comma that is missing', async () => {
    const json = JSON.stringify(parse(plain), null, 2);
    expect((await run(inFolder('bad.json', json.replace('"300 L"', '0')))).err).toMatch(
      /line 15, tank\.volume: found 0/,
    );
    expect((await run(inFolder('bad.json', json.replace('40,', '40')))).err).toMatch(/line 5, column/);
  });

  it('all faults of a design at once', async () => {
    const { err } = await run(inFolder('bad.yaml', plain.replace('300 L', 'big').replace('tilt: 40', 'tilt: 140')));
    expect(err.trim().split('\n')).toHaveLength(2);
  });

  it('weather: file, line, column, value', async () => {
    const spoilt = readFileSync(weather, 'utf8').split('\n');
    spoilt[100] = spoilt[100]!.replace(/,[^,]*$/, ',hot');
    const path = inFolder('spoilt.csv', spoilt.join('\n'));
    const { exit, err } = await command(['run', two, '-w', path]);
    expect(exit).toBe(1);
    expect(err).toMatch(/^noonloop: spoilt\.csv, line 101, column ".*": found "hot", expected a number/);
  });

  it('weather: advice is of the command, not of the library', async () => {
    const lines = readFileSync(weather, 'utf8').split('\n');
    const path = inFolder('short.csv', lines.toSpliced(500, 1).join('\n'));
    const missing = await command(['weather', path]);
    expect(missing.err).toMatch(/1 is missing\. .* or say --fill-gaps\.\n$/);
    const none = await command(['weather', two]);
    expect(none.err).toMatch(/ or say by --layout how this table is laid out\.\n$/);
  });

  it('weather: light at its own step beside filled gaps, with the reason', async () => {
    const { exit, err } = await command(['run', two, '-w', weather, '--own-step', '--fill-gaps']);
    expect(exit).toBe(2);
    expect(err).toBe(
      'noonloop: --own-step beside --fill-gaps: gaps are filled hour by hour, so light at its own step must have none. Leave one of the two out.\n',
    );
  });

  it('prices and layouts: the line of their field', async () => {
    const prices = readFileSync(example('settings/prices.yaml'), 'utf8').replace(
      'discountRate: 0.03',
      'maintenace: 50\ndiscountRate: 3',
    );
    const path = inFolder('prices.yaml', prices);
    expect((await run(two, '--prices', path)).err).toBe(
      [
        `noonloop: ${path}, line 11, maintenace: found a field of this name, expected one of the documented fields. Did you mean maintenance?`,
        `noonloop: ${path}, line 12, discountRate: found 3, expected a fraction above −1 and at most 0.5. Give 0.03 for 3 % a year.`,
        '',
      ].join('\n'),
    );
    const record = readFileSync(example('settings/own-meter.yaml'), 'utf8').replace('unit: L', 'unit: pints');
    expect((await run(two, '--draw', inFolder('meter.yaml', record))).err).toMatch(
      /meter\.yaml, line 5, unit: found "pints"/,
    );
  });

  it.each<[string, string[], number, RegExp]>([
    ['no such file', ['run', '/nowhere.yaml', '-w', weather], 1, /nowhere\.yaml: there is no such file/],
    ['a folder', ['run', folder, '-w', weather], 1, /expected a file, not a folder/],
    ['no such weather', ['run', two, '-w', '/nowhere.epw'], 1, /nowhere\.epw: expected a file at this path/],
    ['an unknown word', ['runn', two], 2, /unknown command 'runn'/],
    ['a kind of study as a word', ['sweep', two], 2, /sweep is a kind of study.*noonloop draft study/],
    ['an unknown option', ['run', two, '-w', weather, '--fast'], 2, /unknown option '--fast'/],
    ['no weather', ['run', two], 2, /run needs the option -w, --weather <file>/],
    ['an unknown format', ['run', two, '-w', weather, '-f', 'pdf'], 2, /Allowed choices are text, html/],
    ['an ending that says nothing', ['run', two, '-w', weather, '-o', 'x.pdf'], 2, /the ending says no format/],
    ['one design to compare', ['compare', two, '-w', weather], 2, /two designs or more/],
    [
      'no folder for the output',
      ['run', two, '-w', weather, '-o', '/nowhere/x.md'],
      4,
      /there is no folder "\/nowhere"/,
    ],
  ])('%s', async (_, words, code, says) => {
    const { exit, out, err } = await command(words);
    expect([exit, out]).toEqual([code, '']);
    expect(err).toMatch(says);
  });
});

describe('files are written whole, and nowhere else [requirement]', () => {
  it('replaces nothing without --force, and looks before it works', async () => {
    const path = inFolder('mine.md', 'precious');
    const { exit, err } = await run('/nowhere.yaml', '-o', path);
    expect(exit).toBe(4);
    expect(err).toContain('say --force');
    expect(readFileSync(path, 'utf8')).toBe('precious');
    await writeWhole({ path, force: true }, 'new');
    expect(readFileSync(path, 'utf8')).toBe('new');
    await expect(writeWhole({ path, force: false }, 'newer')).rejects.toMatchObject({ exit: 4 });
    expect(readFileSync(path, 'utf8')).toBe('new');
  });

  it('leaves nothing behind when it fails, and nothing beside what was asked when it does not', async () => {
    mkdirSync(inFolder('empty'));
    await run(inFolder('bad.yaml', 'tank: 3'), '-o', inFolder('empty/x.html'));
    expect(readdirSync(inFolder('empty'))).toEqual([]);
    await writeWhole({ path: inFolder('empty/x.md'), force: false }, 'all');
    expect(readdirSync(inFolder('empty'))).toEqual(['x.md']);
  });

  it('follows no link: what a link points at stays as it is', async () => {
    const path = inFolder('target.md', 'precious');
    symlinkSync(path, inFolder('link.md'));
    expect((await run(two, '-o', inFolder('link.md'), '--force')).exit).toBe(4);
    expect(readFileSync(path, 'utf8')).toBe('precious');
  });
});

describe('the other words', () => {
  it('weather: says what it found and draws it [requirement]', async () => {
    const picture = inFolder('light.svg');
    const { exit, out } = await command(['weather', weather, '--picture', picture, '--strict']);
    expect(exit).toBe(0);
    expect(out).toContain('41.20° N 77.50° W, 300 m above the sea, UTC−5.');
    expect(out).toContain('INVENTED data');
    expect(readFileSync(picture, 'utf8')).toMatch(/^<svg /);
    expect(out).toContain('This year is usable.');
    const turned = inFolder('turned.csv', readFileSync(weather, 'utf8').replace('longitude_deg: -', 'longitude_deg: '));
    expect((await command(['weather', turned, '--strict'])).exit).toBe(1);
  });

  it('weather with a fault that changes the year ends a run, unless it is insisted [requirement]', async () => {
    const turned = inFolder('turned.csv', readFileSync(weather, 'utf8').replace('longitude_deg: -', 'longitude_deg: '));
    const refused = await command(['run', two, '-w', turned]);
    expect([refused.exit, refused.out]).toEqual([1, '']);
    expect(refused.err).toMatch(
      /^noonloop: turned\.csv: found the light comes at another time than the sun: a longitude of the wrong sign/,
    );
    expect(refused.err).toMatch(/or say --insist-on-weather\.\n$/);
    const insisted = await command(['run', two, '-w', turned, '--insist-on-weather', '--json']);
    expect(insisted.exit).toBe(0);
    expect(JSON.parse(insisted.out).runs[0].weatherAssumptions.join()).toContain(
      'Fault about the weather: The light comes at another time than the sun',
    );
  });

  it('rate: a collector that goes into a design [requirement]', async () => {
    const { exit, out } = await command(['rate', example('settings/used-panel.yaml'), '--format', 'yaml']);
    expect(exit).toBe(0);
    const { collector } = parse(out) as { collector: SystemInput['array']['collector'] };
    const design = defineSystem({
      ...(parse(DRAFTS.design[0]) as SystemInput),
      array: { panels: 2, tilt: 40, azimuth: 180, collector },
    });
    expect(design.array.collector.eta0).toBeGreaterThan(0.5);
    const text = (await command(['rate', example('settings/used-panel.yaml')])).out;
    expect(text).toContain('caution: ');
    expect(text).toMatch(/eta0 +0\.\d+ +0\.\d+ +0\.\d+/);
    const wrong = await command(['rate', inFolder('panel.yaml', 'length: 2 m\nwidth: 1 m\ncovers: 9\n')]);
    expect(wrong.err).toMatch(/panel\.yaml, line 3, covers: found 9/);
  });

  it('check-log: faults of the log by file and line [the check itself: tests/sim-core/advice/check]', async () => {
    const check = (log: string) => command(['check-log', two, '-w', weather, '--log', inFolder('log.yaml', log)]);
    inFolder('readings.csv', 'date,time,tank top\n2023-07-01,07:30,warm\n');
    const layout =
      'file: readings.csv\ntime: { date: date, clock: time }\ncolumns:\n  tankTopTemperature: { column: tank top, unit: degC }\n';
    expect((await check(layout)).err).toMatch(/^noonloop: readings\.csv, line 2, column "tank top": found "warm"/);
    expect((await check(layout.replace('file', 'fill'))).err).toMatch(/log\.yaml, line 1, file: found nothing/);
    expect((await check(layout.replace('degC', 'psi'))).err).toMatch(/log\.yaml, line 4, columns\.tankTopTemperature/);
    expect((await command(['check-log', two, '-w', weather])).exit).toBe(2);
  });

  it('draft: a design that runs [requirement]', () => {
    expect(defineSystem(parse(DRAFTS.design[0]) as SystemInput).name).toBe('my house');
  });

  it('schema: the published file [requirement]', async () => {
    const { out } = await command(['schema']);
    const published = new URL('../../../packages/sim-core/schema/design-1.json', import.meta.url);
    expect(JSON.parse(out)).toEqual(JSON.parse(readFileSync(published, 'utf8')));
  });

  it.each([[[]], [['run']], [['compare']], [['weather']], [['rate']], [['check-log']], [['draft']], [['schema']]])(
    '--help of %j goes to standard output, within the width [requirement]',
    async (words) => {
      const { exit, out, err } = await command([...words, '--help']);
      expect([exit, err]).toEqual([0, '']);
      expect(out).toMatch(/^Usage: noonloop/);
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    },
  );
});

describe('the terminal [requirement]', () => {
  it('progress goes over itself where somebody watches; a name in a file steers nothing; how sure it is, only where asked', async () => {
    const path = inFolder('red.yaml', readFileSync(two, 'utf8').replace('name: two panels', 'name: "\\e[31mred\\a"'));
    // Thirty years of how sure it is are not waited for: the terminal breaks off where they begin.
    let shown = '';
    const watched = {
      isWatched: true,
      err: (text: string) => {
        shown += text;
        if (text.includes('looking how sure it is, 1 of 1')) throw new Refusal(4, ['broken off']);
      },
    };
    const { exit, out } = await command(['run', path, '-w', weather, '--how-sure'], watched);
    expect([exit, out]).toEqual([4, '']);
    expect(shown).toContain('\r\u001b[Ksimulating 1 of 1: ?[31mred?');
    expect(shown.replaceAll('\r\u001b[K', '')).not.toContain('\u001b');
    const year = await libraryYear();
    const text = renderText({ ...year, design: { ...year.design, name: '\u001b[31mred\u0007' } }, { width: 80 });
    for (const letter of ['\u0007', '\u001b']) expect(text).not.toContain(letter);
    expect(text).toContain('[31mred'); // harmless letters
  });

  it('colours only where they are taken', async () => {
    const wrong = ['run', '/nowhere.yaml', '-w', weather];
    expect((await command(wrong, { hasColours: true })).err).toContain('\u001b[1;31mnoonloop:\u001b[0m /nowhere');
    expect((await command(wrong)).err).not.toContain('\u001b');
  });
});

describe('as a process [requirement]', () => {
  const source = new URL('../../../packages/reports/bin/from-source.ts', import.meta.url);
  const program = [...process.execArgv, fileURLToPath(source)];

  it('a full device in place of standard output: one line, exit code 4; nothing of the program’s inside', () => {
    if (!existsSync('/dev/full')) return console.log('no /dev/full here: not tried');
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [...program, 'schema'], {
      stdio: ['ignore', full, 'pipe'],
      encoding: 'utf8',
    });
    closeSync(full);
    expect([status, stderr]).toEqual([
      4,
      expect.stringMatching(/^noonloop: standard output cannot be written \(ENOSPC\)\..*\n$/),
    ]);
  });

  it('what is half written when a signal comes is taken away', async () => {
    const path = inFolder('ended/report.txt');
    mkdirSync(dirname(path));
    const ended = writeWhole({ path, force: false }, 'x'.repeat(20_000_000)).catch((error: Error) => error.message);
    while (!readdirSync(dirname(path)).some((name) => name.endsWith('.part'))) await setImmediate();
    forgetAll();
    expect(await ended).toMatch(/cannot be written/);
    expect(readdirSync(dirname(path))).toEqual([]);
  });

  it('ends with its code and separates results from errors', () => {
    // A word that is loaded alone, for this starts a process; that results go to standard output is seen above.
    const { status, stdout, stderr } = spawnSync(process.execPath, [...program, 'draft', 'house'], {
      encoding: 'utf8',
    });
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/house/);
  });
});

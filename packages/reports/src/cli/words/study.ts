// A study from one small file: sweep, best-of, sensitivity, uncertainty.
import type { Measure, Search, Study, StudyRow } from '@noonloop/sim-core';
import { nearest } from '../../nearest.ts';
import { changedDesign } from '../design-text.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { numberOf } from '../option-values.ts';
import type { Answer } from '../sheet/model.ts';
import { sentences } from '../sheet/model.ts';
import type { BuiltStudy } from '../study/build.ts';
import { yearsOfWeather } from '../weather.ts';
import { type Call, type Word, weatherOptions } from '../word.ts';

interface StudyWordOptions {
  readonly keep?: string;
  readonly part?: string;
  readonly threads?: string;
  readonly number?: string;
  readonly picture?: string;
  readonly designOut?: string;
}

/** Runs a study file. */
export const study: Word<StudyWordOptions> = {
  usage: 'study <study>',
  summary: 'many designs: a sweep, the best of, what matters, how sure',
  description:
    'Runs a study that a YAML or JSON file describes: a sweep over fields, a search for the best design, what matters most, or how far results may lie apart. A file of rows (--keep) lets it go on after an interruption; parts of it (--part) may run on many machines, for "noonloop merge".',
  example: 'noonloop study study.yaml --weather town.csv --picture study.svg',
  formats: [],
  needs: ['weather'],
  writes: ['picture', 'design-out'],
  options: (command) =>
    weatherOptions(command)
      .option('-k, --keep <file>', 'keep the rows here; a study that finds rows there goes on behind them')
      .option('--part <part>', 'run one part, such as 2/8, or "auto" in an array job of a cluster; with --keep')
      .option('--threads <number>', 'how many at once (default: as many as the machine has cores)')
      .option('--number <name>', 'key figure of picture and first sentence (default: the goal, else deliveredEnergy)')
      .option('-p, --picture <file>', 'draw the outcome as SVG; - for standard output')
      .option('--design-out <file>', 'best-of: write the best design; - for standard output'),
  run: async (call) => {
    const { files, options, units, progress } = call;
    const { buildStudy } = await import('../study/build.ts');
    await progress.show('reading the weather');
    const weathers = await yearsOfWeather([options.weather!], options);
    const built = await buildStudy(files[0]!, weathers);
    if (options.designOut !== undefined && built.said.study !== 'best-of')
      throw new Refusal(EXIT.usage, [`--design-out is for a best-of study; this is a ${built.said.study}.`]);
    const number = await numberAsked(options.number, built);
    progress.clear();
    if (options.part !== undefined) return runPart(call, built);
    const { rows, outcome } = await runWhole(call, built);
    const { answerOf } = await import('../study/answers.ts');
    const wantsPicture = options.picture !== undefined;
    const { sheet, data, picture } = await answerOf({ built, outcome, rows, number, units, wantsPicture });
    return { sheet, data, files: await further(options, built, outcome, picture) };
  },
};

async function further(
  options: Call<StudyWordOptions>['options'],
  { base, designFile, name }: BuiltStudy,
  outcome: unknown,
  picture: string | null,
): Promise<NonNullable<Answer['files']>> {
  const files = picture === null ? [] : [{ option: 'picture', text: picture }];
  if (options.designOut === undefined) return files;
  const best = (outcome as { best?: StudyRow | null }).best ?? null;
  if (best === null)
    throw new Refusal(EXIT.input, ['no design keeps all limits: there is none to write. Widen limits or ranges.']);
  const changes = Object.entries(best.inputs).map(([path, value]) => ({ path, value: value as number }));
  return [...files, { option: 'design-out', text: await changedDesign(designFile, base, changes, `${name}, best`) }];
}

async function numberAsked(asked: string | undefined, { said }: BuiltStudy): Promise<Measure> {
  const { MEASURE_UNITS } = await import('@noonloop/sim-core');
  if (asked !== undefined) {
    if (Object.hasOwn(MEASURE_UNITS, asked)) return asked as Measure;
    const near = nearest(asked, Object.keys(MEASURE_UNITS));
    const hint = near === null ? `Take one of ${Object.keys(MEASURE_UNITS).join(', ')}.` : `Did you mean ${near}?`;
    throw new Refusal(EXIT.usage, [`--number: found "${asked.slice(0, 40)}", expected a key figure. ${hint}`]);
  }
  const { goal } = said;
  if (goal === undefined) return 'deliveredEnergy';
  return 'highest' in goal ? goal.highest : goal.lowest;
}

/** How the library runs it. */
function runnerOptions({ options }: Call<StudyWordOptions>) {
  const { keep, threads, quiet } = options;
  return {
    bar: quiet !== true,
    ...(threads === undefined ? {} : { workers: numberOf('threads', threads) }),
    ...(keep === undefined ? {} : { file: keep }),
  };
}

async function runWhole(
  call: Call<StudyWordOptions>,
  { study: made }: BuiltStudy,
): Promise<{ readonly rows: readonly StudyRow[]; readonly outcome: unknown }> {
  const { runStudy } = await import('@noonloop/sim-core/node');
  const rows: StudyRow[] = [];
  const listed = { outcome: (options?: Parameters<Study['run']>[0]) => listing(made, options, rows) };
  const outcome = await runStudy(listed, runnerOptions(call));
  return { rows, outcome };
}

/** Runs a study, keeps its rows in hand, and analyses them. */
async function listing(
  made: Study<unknown> | Search,
  options: Parameters<Study['run']>[0],
  rows: StudyRow[],
): Promise<unknown> {
  const course = made.run(options) as AsyncGenerator<StudyRow, unknown>;
  for (;;) {
    const { done, value } = await course.next();
    if (done) return 'analyse' in made ? made.analyse(rows) : value;
    rows.push(value as StudyRow);
  }
}

async function runPart(call: Call<StudyWordOptions>, { study: made, name, said }: BuiltStudy): Promise<Answer> {
  const { part, keep } = call.options;
  if (keep === undefined) throw new Refusal(EXIT.usage, ['--part needs --keep: the file for the rows of this part.']);
  if (!('analyse' in made))
    throw new Refusal(EXIT.usage, ['a best-of study has no parts: each design follows from those before.']);
  const { shard } = await import('@noonloop/sim-core');
  const { runStudy, shardFromEnvironment } = await import('@noonloop/sim-core/node');
  const [index, count] = part === 'auto' ? placeOf(shardFromEnvironment()) : partOf(part!);
  const piece = shard(made, index, count);
  const rows = await runStudy(piece, runnerOptions(call));
  const words = `Part ${index + 1} of ${count}: ${rows.length} of ${piece.total} designs are in ${keep}. "noonloop merge" puts the parts together.`;
  return {
    sheet: { title: `${said.study} of ${name}`, blocks: [sentences(words)] },
    data: { part: index + 1, parts: count, rows: rows.length, total: piece.total, file: keep },
  };
}

const placeOf = ({ index, count }: { index: number; count: number }): readonly [number, number] => [index, count];

function partOf(text: string): readonly [number, number] {
  const parts = /^(\d+)\/(\d+)$/.exec(text);
  const [index, count] = [Number(parts?.[1]), Number(parts?.[2])];
  if (parts !== null && index >= 1 && index <= count && count <= 100_000) return [index - 1, count];
  throw new Refusal(EXIT.usage, [
    `--part: found "${text.slice(0, 40)}", expected a part such as 2/8, from 1/8 to 8/8.`,
  ]);
}

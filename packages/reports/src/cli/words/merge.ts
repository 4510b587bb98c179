// Parts of a study that ran on many machines, put together.
import { checkTarget } from '../files.ts';
import { sentences } from '../sheet/model.ts';
import type { Word } from '../word.ts';

/** Writes the file that the whole study would have written. */
export const merge: Word<{ readonly keep?: string }> = {
  usage: 'merge <parts...>',
  summary: 'put the parts of a study together',
  description:
    'Puts the files of rows of all parts of a study together into the very file that the whole study would have written; "noonloop study --keep" then reads it back and says what was found.',
  example: 'noonloop merge part-1.jsonl part-2.jsonl --keep whole.jsonl',
  formats: [],
  needs: ['keep'],
  options: (command) => command.option('-k, --keep <file>', 'the file for all rows'),
  run: async ({ files, options }) => {
    const { mergeResults } = await import('@noonloop/sim-core/node');
    await checkTarget({ path: options.keep!, force: options.force === true });
    const header = await mergeResults(files, options.keep!);
    return {
      sheet: {
        title: 'Parts put together',
        blocks: [sentences(`${header.total} designs of ${files.length} parts are in ${options.keep}.`)],
      },
      data: header,
    };
  },
};

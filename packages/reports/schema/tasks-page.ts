/** The tables of all tasks of maintenance and of all tests of a checked log, for the guide. */
import { TASK_DUTIES, TASKS, TEST_CARDS } from '@noonloop/sim-core';
import { CARD_WORDS, DOER_WORDS, OUTCOME_WORDS } from '../src/words/cards.ts';
import { CAUSE_NAMES } from '../src/words/causes.ts';
import { TASK_BASIS_WORDS } from '../src/words/task-reasons.ts';
import { TASK_WORDS } from '../src/words/tasks.ts';
import { markdownTable } from './cautions-page.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** One row a task: what raises it, its words, who may act, its source. */
export function taskTable(): string {
  return markdownTable(
    ['code', 'raised by', 'words', 'who may act', 'source'],
    TASKS.map((code) => {
      const { raised, what, caution } = TASK_WORDS[code];
      const { who, basis } = TASK_DUTIES[code];
      return [
        `\`${code}\``,
        raised,
        `${what}<br>${caution}`,
        capital(DOER_WORDS[who]),
        capital(TASK_BASIS_WORDS[basis]),
      ];
    }),
  );
}

/** One row a test: what it tells apart, its words, who may act. */
export function testTable(): string {
  return markdownTable(
    ['code', 'told by it', 'words', 'who may act', 'source'],
    TEST_CARDS.map(({ code, who, outcomes, otherwise }) => {
      const { what, caution } = CARD_WORDS[code];
      const told = outcomes.map(
        ([seen, causes]) =>
          `${capital(OUTCOME_WORDS[seen])}: ${causes.map((cause) => CAUSE_NAMES[cause].split(':')[0]).join('; ')}`,
      );
      return [
        `\`${code}\``,
        [...told, `${capital(OUTCOME_WORDS[otherwise])}: all others`].join('<br>'),
        caution === null ? what : `${what}<br>${caution}`,
        capital(DOER_WORDS[who]),
        'Common practice, no source; effort: judgement',
      ];
    }),
  );
}

/** The page of all codes that a program may meet, but for the cautions, tasks and tests that have a page of their own. */
import { ADVICE_WORDS } from '../src/words/advice.ts';
import { CALIBRATION_NOTE_WORDS } from '../src/words/calibration.ts';
import { CAUSE_NAMES, DOUBT_WORDS, FORM_WORDS } from '../src/words/causes.ts';
import { CHECK_CAUTION_WORDS, CHECK_NOTE_WORDS, REASON_WORDS } from '../src/words/check.ts';
import { EVIDENCE_WORDS, LOOK_WORDS, UNTOLD_WORDS } from '../src/words/gauges.ts';
import { NOTICE_WORDS } from '../src/words/notices.ts';
import { SURVEY_WORDS } from '../src/words/survey.ts';
import { CALENDAR_CAUTION_WORDS, TASK_REASON_WORDS } from '../src/words/task-reasons.ts';
import { RUN_ASSUMPTION_WORDS } from '../src/words/weather.ts';
import { LINES } from '../src/words/working.ts';
import { YARD_NOTE_WORDS, YARD_REMEDY_WORDS } from '../src/words/yard-test.ts';
import { markdownTable } from './cautions-page.ts';

/** One kind of code: where it stands in results, its words, and the page that explains it. */
interface CodeGroup {
  readonly title: string;
  readonly field: string;
  readonly page: string;
  readonly words: Readonly<Record<string, string>>;
}

const survey = Object.fromEntries(
  Object.entries(SURVEY_WORDS).map(([name, { what, how }]) => [name, `${what}. ${how}`]),
);

/** Every kind, in the order in which a reader meets them. */
export const CODE_GROUPS: readonly CodeGroup[] = [
  { title: 'Notices of a run', field: 'RunResult.notices', page: 'reports.md', words: NOTICE_WORDS },
  { title: 'What a run assumed', field: 'RunResult.assumptions', page: 'weather.md', words: RUN_ASSUMPTION_WORDS },
  { title: 'Notes and cautions of advice', field: '`notes`, `cautions`', page: 'sizing.md', words: ADVICE_WORDS },
  { title: 'Numbers of a survey', field: 'SurveyRating.numbers', page: 'buying.md', words: survey },
  { title: 'Notes of a yard test', field: 'YardRating.notes', page: 'buying.md', words: YARD_NOTE_WORDS },
  { title: 'What a yard test lacks', field: 'YardCoefficient.remedy', page: 'buying.md', words: YARD_REMEDY_WORDS },
  { title: 'Causes of a checked log', field: 'Explanation.cause', page: 'health.md', words: CAUSE_NAMES },
  { title: 'Forms of a cause', field: 'Explanation.form', page: 'health.md', words: FORM_WORDS },
  { title: 'Doubts about a log', field: 'LogCheck.doubts', page: 'health.md', words: DOUBT_WORDS },
  { title: 'Verdicts without a cause', field: 'LogCheck.reason', page: 'health.md', words: REASON_WORDS },
  { title: 'Notes of a checked log', field: 'LogCheck.notes', page: 'health.md', words: CHECK_NOTE_WORDS },
  { title: 'Cautions of a checked log', field: 'LogCheck.cautions', page: 'health.md', words: CHECK_CAUTION_WORDS },
  { title: 'Notes of a calibration', field: 'Calibration.notes', page: 'health.md', words: CALIBRATION_NOTE_WORDS },
  { title: 'Faults by gauges alone', field: 'GaugeCheck.findings', page: 'health.md', words: LOOK_WORDS },
  { title: 'What speaks for them', field: 'GaugeFinding.evidence', page: 'health.md', words: EVIDENCE_WORDS },
  { title: 'What gauges cannot tell', field: 'GaugeCheck.untold', page: 'health.md', words: UNTOLD_WORDS },
  { title: 'Reasons of a task', field: 'MaintenanceTask.reasons', page: 'maintenance.md', words: TASK_REASON_WORDS },
  {
    title: 'Cautions of the calendar',
    field: 'MaintenanceCalendar.cautions',
    page: 'maintenance.md',
    words: CALENDAR_CAUTION_WORDS,
  },
];

/** A template in braces for numbers; a number of the sentence's own stands as it is. */
const shown = (text: string): string => text.replace(/\{(-?[\d.e+]+ [^{}]+)\}/g, '$1');

/** All groups, a table each, and the lines of workings. */
export function codeTables(): string {
  const groups = CODE_GROUPS.map(({ title, field, page, words }) => {
    const rows = Object.entries(words).map(([code, sentence]) => [`\`${code}\``, shown(sentence)]);
    const place = field.includes('`') ? field : `\`${field}\``;
    return `## ${title}\n\n${place}; explained in [${page}](${page}).\n\n${markdownTable(['code', 'words'], rows)}`;
  });
  const lines = Object.entries(LINES).map(([code, { quantity, formula, source }]) => [
    `\`${code}\``,
    shown(quantity),
    shown(formula),
    shown(source),
  ]);
  const workings = markdownTable(['code', 'quantity', 'formula', 'source'], lines);
  return [...groups, `## Lines of a working\n\n\`steps\`; \`workingInWords\` puts the numbers in.\n\n${workings}`].join(
    '\n\n',
  );
}

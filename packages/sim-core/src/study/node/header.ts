/** First line of a results file. */
import { MEASURE_UNITS } from '../measures.ts';
import { StudyError } from '../study-error.ts';
import type { StudyPlan } from '../types.ts';
import { type Fingerprint, fingerprintOf } from './fingerprint.ts';

/** Version of the layout of these files. */
const LAYOUT = 1;

/** What a results file says of itself before its rows. */
export interface ResultsHeader {
  /** What the file is. */
  readonly format: 'noonloop study results';
  /** Version of its layout. */
  readonly layout: number;
  /** Of the study that it belongs to. */
  readonly fingerprint: Fingerprint;
  /** Labels of the weather years, for readers. */
  readonly weather: readonly string[];
  /** Units of the key figures in it. */
  readonly units: Readonly<Record<string, string>>;
  /** Designs of the whole study. */
  readonly total: number;
  /** Which part of it the file holds; `null`: all. */
  readonly shard: {
    /** Which of them, 0 for the first. */
    readonly index: number;
    /** How many there are. */
    readonly count: number;
  } | null;
  /** First design of the part. */
  readonly first: number;
  /** Designs of the part. */
  readonly count: number;
}

/** The header that a plan writes. */
export function headerOf(plan: StudyPlan): ResultsHeader {
  const { measures, monthly } = plan.request;
  const kept = [...new Set([...measures, ...monthly])];
  return {
    format: 'noonloop study results',
    layout: LAYOUT,
    fingerprint: fingerprintOf(plan),
    weather: plan.weathers.map(({ source }) => source),
    units: Object.fromEntries(kept.map((measure) => [measure, MEASURE_UNITS[measure]])),
    total: plan.total,
    shard: plan.shard,
    first: plan.first,
    count: plan.count,
  };
}

const PARTS: Readonly<Record<keyof Fingerprint, string>> = {
  engine: 'another version or build of the simulation',
  arithmetic: 'the arithmetic of another JavaScript engine (Node 24 rounds otherwise than 20 and 22)',
  kind: 'another kind of study',
  description: 'another base design, other axes, ranges, seeds or sizes',
  weather: 'other weather',
  request: 'other key figures or another stepping of the year',
};

/** @throws StudyError naming what differs, unless both headers are of one study. */
export function requireSameStudy(place: string, found: ResultsHeader, expected: ResultsHeader): void {
  const keys = Object.keys(PARTS) as (keyof Fingerprint)[];
  const changed = keys.filter((key) => found.fingerprint[key] !== expected.fingerprint[key]).map((key) => PARTS[key]);
  if (changed.length > 0) {
    const remedy = 'Rows of two studies do not mix: take another file name, or delete this file to start anew.';
    throw new StudyError(place, `results with ${changed.join('; ')}`, 'results of this very study', remedy);
  }
}

/** @throws StudyError unless the content of a first line is a header that this version can read. */
export function requireHeader(place: string, content: unknown): ResultsHeader {
  const header = content as ResultsHeader | null;
  if (header?.format === 'noonloop study results' && header.layout === LAYOUT) return header;
  throw new StudyError(
    `${place} line 1`,
    header?.format === undefined
      ? 'no header of a results file, or one with a wrong checksum'
      : `layout ${header.layout}`,
    `a header of layout ${LAYOUT}`,
    'Nothing was written to it; choose another file name.',
  );
}

import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Short files that take long. Where no run has left its times, as in a fresh clone, Vitest begins with the largest files and so ends with these, one process at work and one idle. */
const FIRST = [
  'sim-core/study/bands.long',
  'reports/live.long',
  'weather-io/fuzz.long',
  'property/system.long',
  'check/check-log.long',
  'reports/cli/check-log.long',
  'reports/cli/how-sure.long',
  'reference-model/reference-model.long',
  'input/zod.',
  'sizing/pump-start',
];

/** The order of files: those that take long first, so that all processes end together. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number => {
      const at = FIRST.findIndex((name) => moduleId.includes(`/${name}`));
      return at < 0 ? FIRST.length : at;
    };
    return (await super.sort(files)).sort((one, other) => place(one) - place(other));
  }
}

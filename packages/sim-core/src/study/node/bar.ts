import cliProgress from 'cli-progress';
import type { StudyProgress } from '../types.ts';

/** A bar in a terminal. */
export interface ProgressBar {
  /** Pass it as `onProgress`. */
  readonly onProgress: (progress: StudyProgress) => void;
  /** Leaves the bar as it stands and ends its line. */
  readonly stop: () => void;
}

/** Time as people say it. @param seconds - 0 or more [s] */
function timeInWords(seconds: number): string {
  const whole = Math.ceil(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.trunc(whole / 60)} min ${whole % 60} s`;
  return `${Math.trunc(whole / 3600)} h ${Math.trunc((whole % 3600) / 60)} min`;
}

/**
 * A bar with count, rate and time left, on the error output where that is a terminal; nothing where it is not, so that logs and
 * pipes stay clean.
 *
 * @param stream - Where to draw. Default: the error output.
 */
export function progressBar(stream: NodeJS.WriteStream = process.stderr): ProgressBar {
  const bar = new cliProgress.SingleBar({
    stream,
    format: '{bar} {value} of {total} designs, {rate} a second, {left}{failed}',
    barsize: 24,
    hideCursor: true,
    linewrap: false,
    clearOnComplete: false,
    noTTYOutput: false,
  });
  let started = false;
  return {
    onProgress: ({ done, total, failed, rate, timeLeft }) => {
      const words = {
        rate: rate.toFixed(rate < 10 ? 1 : 0),
        left: timeLeft === null ? 'time left not known yet' : `${timeInWords(timeLeft)} left`,
        failed: failed === 0 ? '' : `, ${failed} failed`,
      };
      if (!started) bar.start(total, 0, words);
      started = true;
      bar.update(done, words);
    },
    stop: () => bar.stop(),
  };
}

/** One process at a time writes a results file. */
import { readFileSync, statSync, unlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';
import { StudyError } from '../study-error.ts';

/** A file that is held; given free when let go, and where the process ends by itself. */
export interface Lock {
  /** Lets the file go. */
  readonly release: () => void;
}

/** Who asks, and how often a holder shows that it lives. */
interface LockOptions {
  /** Default: this machine. */
  readonly host?: string;
  /** Default: 10 s. [ms] */
  readonly beat?: number;
}

const BEAT = 10_000;
/** A holder on another machine that shows no life for so many beats is gone. */
const BEATS_MISSED = 2.5;

/** Locks of this process; one that bears its number and is not among them is older than it. */
const ours = new Set<string>();

/**
 * Holds a file for this process by a second one beside it, `<path>.lock`, which names process and machine and is touched while it is held. A lock of a
 * process that was killed is taken over: at once on the same machine, after 25 s without a touch on another.
 *
 * @throws StudyError where another process holds it.
 */
export async function lockFile(path: string, options: LockOptions = {}): Promise<Lock> {
  const { beat = BEAT, host = hostname() } = options;
  const lock = `${path}.lock`;
  const text = `${process.pid} ${host}\n`;
  for (let attempt = 0; !make(lock, text); attempt++) {
    if (attempt === 2 || !(await isLeftBehind(lock, host, beat))) throw held(path, lock);
    remove(lock);
  }
  ours.add(lock);
  const touching = setInterval(() => touch(lock), beat);
  touching.unref();
  const release = () => {
    clearInterval(touching);
    process.off('exit', release);
    ours.delete(lock);
    if (read(lock) === text) remove(lock);
  };
  process.on('exit', release);
  return { release };
}

function make(lock: string, text: string): boolean {
  try {
    writeFileSync(lock, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    remove(lock); // a full disk has left it empty
    throw error;
  }
}

function held(path: string, lock: string): StudyError {
  const [id = '', host = ''] = read(lock).trim().split(' ');
  const who = id === '' ? 'another process' : `process ${id} on ${host}`;
  const remedy = `Wait for it, or give this study a file of its own. If that process is gone, delete ${lock}.`;
  return new StudyError(path, `that ${who} is writing rows there`, 'a file that nobody else writes', remedy, 'file');
}

async function isLeftBehind(lock: string, host: string, beat: number): Promise<boolean> {
  const [id, owner] = read(lock).trim().split(' ');
  if (owner === host) return Number(id) === process.pid ? !ours.has(lock) : !isRunning(Number(id));
  const touched = touchedAt(lock);
  await sleep(BEATS_MISSED * beat);
  return touchedAt(lock) === touched;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** What a lock says; nothing where it went meanwhile. */
function read(lock: string): string {
  try {
    return readFileSync(lock, 'utf8');
  } catch {
    return '';
  }
}

function touchedAt(lock: string): number {
  try {
    return statSync(lock).mtimeMs;
  } catch {
    return 0;
  }
}

function touch(lock: string): void {
  try {
    utimesSync(lock, new Date(), new Date());
  } catch {
    // The folder went away; the study will say so.
  }
}

function remove(lock: string): void {
  try {
    unlinkSync(lock);
  } catch {
    // It is gone already.
  }
}

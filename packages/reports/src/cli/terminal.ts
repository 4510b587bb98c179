// Where words go: results to standard output, all else to standard error.

/** What a command talks to. */
export interface Terminal {
  /** Results. */
  readonly out: (text: string) => void;
  /** Progress, notes and errors. */
  readonly err: (text: string) => void;
  /** Characters in a line of results. */
  readonly width: number;
  /** Whether somebody watches standard error, so that progress may be drawn over. */
  readonly isWatched: boolean;
  /** Whether standard error takes colours. */
  readonly hasColours: boolean;
}

/** Narrowest and widest line of results; a wider one is hard to read. [characters] */
const WIDTHS = { least: 60, most: 120, unknown: 80 };

/** The terminal of a process; `NO_COLOR`, `FORCE_COLOR` and `TERM=dumb` are obeyed. */
export function processTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  const isWatched = stderr.isTTY === true && env.TERM !== 'dumb' && env.CI === undefined;
  const forbids = (env.NO_COLOR ?? '') !== '' || env.TERM === 'dumb';
  const forces = (env.FORCE_COLOR ?? '') !== '' && env.FORCE_COLOR !== '0';
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    width: Math.min(Math.max(stdout.columns ?? WIDTHS.unknown, WIDTHS.least), WIDTHS.most),
    isWatched,
    hasColours: !forbids && (forces || stderr.isTTY === true),
  };
}

const ESCAPE = '\u001b';

/** A word in bold red or yellow where colours are taken. */
export const coloured = (terminal: Terminal, colour: 'red' | 'yellow', text: string): string =>
  terminal.hasColours ? `${ESCAPE}[1;${colour === 'red' ? 31 : 33}m${text}${ESCAPE}[0m` : text;

/** Control characters of a file, which a terminal would obey, shown as `?`. */
export const harmless = (text: string): string =>
  Array.from(text, (letter) => {
    const code = letter.codePointAt(0)!;
    const isControl = (code < 32 && letter !== '\n' && letter !== '\t') || (code >= 127 && code < 160);
    return isControl ? '?' : letter;
  }).join('');

/** Says what is being done; on a watched terminal each line replaces the one before, elsewhere nothing is said. */
export class Progress {
  readonly #terminal: Terminal;
  readonly #isOn: boolean;

  constructor(terminal: Terminal, quiet: boolean) {
    this.#terminal = terminal;
    this.#isOn = terminal.isWatched && !quiet;
  }

  /** Shows what is being done now, and lets the terminal draw it. */
  async show(text: string): Promise<void> {
    if (!this.#isOn) return;
    this.#terminal.err(`\r${ESCAPE}[K${harmless(text).slice(0, this.#terminal.width - 1)}`);
    await new Promise((resolve) => setImmediate(resolve));
  }

  /** Wipes the line. */
  clear(): void {
    if (this.#isOn) this.#terminal.err(`\r${ESCAPE}[K`);
  }
}

/** How the command ends; scripts may rely on these. */
export const EXIT = {
  /** All went well. */
  ok: 0,
  /** An input is wrong: a design, a weather file, a settings file; or `weather --strict` found faults. */
  input: 1,
  /** The command was called wrongly: an unknown word, option or format. */
  usage: 2,
  /** A fault of the program itself. */
  internal: 3,
  /** The output could not be written: it exists, or its folder does not. */
  output: 4,
} as const;

/** One of {@link EXIT}. */
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Ends a command with lines for people. */
export class Refusal extends Error {
  /** By which it is known. */
  override readonly name = 'Refusal';
  readonly exit: ExitCode;
  readonly lines: readonly string[];
  /** Faults in all; more than there are lines where not all are told. */
  readonly count: number;

  constructor(exit: ExitCode, lines: readonly string[], count: number = lines.length) {
    super(lines.join('\n'));
    this.exit = exit;
    this.lines = lines;
    this.count = count;
  }
}

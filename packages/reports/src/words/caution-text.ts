/** What the sentences of one caution are made of. */

/** What is said of one kind of caution; `{name}` stands for a fact of the run. */
export interface CautionText {
  /** How grave it can be, the gravest first. */
  readonly severity: readonly ('danger' | 'warning' | 'note')[];
  /** What raises it, for the table of all cautions. */
  readonly raised: string;
  /** In a few words, to go on a sentence with. */
  readonly short: string;
  /** Its sentences; the rule says which are spoken. */
  readonly says: Readonly<Record<string, string>>;
  /** Who may do what it asks for. */
  readonly who: string;
  /** Where the threshold is from. */
  readonly source: string;
}

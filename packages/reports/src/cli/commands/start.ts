// Where a user begins: a design to fill in, and the schema by which an editor completes it.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { checkTarget } from '../files.ts';
import { deliver, targetOf } from '../output.ts';
import type { Terminal } from '../terminal.ts';

/** Options of `draft` and `schema`. */
export interface StartOptions {
  readonly out?: string;
  readonly force?: boolean;
  readonly quiet?: boolean;
}

/** A design with what must be said, and what is often known. */
export const DRAFT = `# A design for noonloop. "noonloop schema --out design-1.json" writes the schema by which an editor explains and completes it:
# yaml-language-server: $schema=./design-1.json
# A number is in the unit in brackets; a text may carry another, such as 80 gal. All that is left out takes a default, which
# the report lists with its source. The numbers below are invented.
name: my house
array:
  panels: 2
  tilt: 40 # from the horizontal [degrees]
  azimuth: 180 # clockwise from north: 90 east, 180 south, 270 west [degrees]
  collector: # from the panel's test report (ISO 9806), or from "noonloop rate" for a used one
    area: 2 m2 # the area to which eta0, a1 and a2 refer
    eta0: 0.75
    a1: 3.8 # [W/(m2 K)]
    a2: 0.012 # [W/(m2 K2)]
tank:
  volume: 300 L
draw:
  people: 4 # or dailyVolume: 200 L, or profile: M
  tapTemperature: 45 degC
heater:
  kind: stored-gas # stored-electric, instantaneous-gas, instantaneous-electric or element
`;

/** Hands out a design to fill in. */
export const draftDesign = (options: StartOptions, terminal: Terminal): Promise<void> =>
  handOut(async () => DRAFT, options, terminal);

/** Hands out the JSON Schema of a design. */
export const designSchema = (options: StartOptions, terminal: Terminal): Promise<void> =>
  handOut(
    () => readFile(createRequire(import.meta.url).resolve('@noonloop/sim-core/schema/design-1.json'), 'utf8'),
    options,
    terminal,
  );

async function handOut(text: () => Promise<string>, options: StartOptions, terminal: Terminal): Promise<void> {
  const target = targetOf(options.out, options.force);
  if (target !== null) await checkTarget(target);
  await deliver(await text(), target, terminal, options.quiet === true);
}

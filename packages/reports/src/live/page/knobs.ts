/** All knobs, in their order on the page. */
import type { Knob } from './knob.ts';
import { HOUSE } from './knobs-house.ts';
import { LOOP } from './knobs-loop.ts';
import { MONEY } from './knobs-money.ts';
import { ROOF } from './knobs-roof.ts';

/** Every knob. */
export const KNOBS: readonly Knob[] = [...ROOF, ...HOUSE, ...LOOP, ...MONEY];

/** What can hurt someone about a loop under pressure. */
import { fact, type Saying, say } from '../../input/saying.ts';
import type { SteamReach } from '../../physics/loop/vessel-need.ts';
import type { AdviceCode } from '../advice-codes.ts';

/** Cautions of a sized loop; the first where its steam gets to pump and vessel. */
export const pressureCautions = ({ powerLeft }: SteamReach): Saying<AdviceCode>[] => [
  ...(powerLeft > 0 ? [say('steam-reaches-pump' as const, { power: fact(powerLeft, 'W') })] : []),
  say('nothing-that-shuts'),
  say('steam-and-glycol-scald'),
  say('vessel-must-bear'),
];

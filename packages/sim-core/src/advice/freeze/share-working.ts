/** The working of a share of glycol, and what to look at. */
import { type Saying, say } from '../../input/saying.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import type { Glycol } from '../../physics/fluid/melinder.ts';
import type { AdviceCode } from '../advice-codes.ts';

/** What the lines show: temperatures [°C], shares [-], volumes [m³]. */
interface ShareNumbers {
  readonly air: number;
  readonly coldest: number;
  readonly coldestHour: number;
  readonly target: number;
  readonly margin: number;
  /** By mass. */
  readonly needed: number;
  /** By mass. */
  readonly leastMass: number;
  readonly volumeFraction: number;
  /** Of the loop without its vessel. */
  readonly whole: number;
  /** In the vessel. */
  readonly held: number;
}

/** From the coldest hour to the glycol to pour in. */
export function shareSteps({
  air,
  coldest,
  coldestHour,
  target,
  margin,
  needed,
  leastMass,
  volumeFraction,
  whole,
  held,
}: ShareNumbers): WorkingStep[] {
  return [
    line('share-coldest', [coldest, '°C'], {
      hour: [coldestHour, 'hour of the year'],
      air: [air, '°C'],
      fall: [air - coldest, 'K'],
    }),
    line('share-freezing-point', [target, '°C'], { coldest: [coldest, '°C'], margin: [margin, 'K'] }),
    line('share-by-mass', [needed, '-']),
    line('share-by-volume', [volumeFraction, '-'], { needed: [needed, '1'], least: [leastMass, '1'] }),
    line('share-glycol', [volumeFraction * (whole + held), 'm³'], {
      share: [volumeFraction, '1'],
      loop: [whole, 'm³'],
      vessel: [held, 'm³'],
    }),
  ];
}

/** @param least - Whether inhibitor and biocide ask for more than the cold does. */
export const shareNotes = (fluid: Glycol, least: boolean): Saying<AdviceCode>[] => [
  say('mix-before-filling'),
  ...(least ? [say('least-share-governs' as const)] : []),
  ...(fluid === 'ethylene-glycol' ? [say('ethylene-glycol-is-poison' as const)] : []),
  say('more-than-needed'),
];

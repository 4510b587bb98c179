/** The two sentences about several designs. */
import { presentWorthFactor } from '../money/factors.ts';
import { joinWords } from './join.ts';
import { aboutHours, idleHours } from './one.ts';
import type { Answer, AnswerContext, Candidate } from './types.ts';
import { capital, currencyWords, fuelWords, isOrAre, nameOf, savedWords } from './words.ts';
import { deciding, savedOf, savingAnswer, worthAnswer } from './worth.ts';

/** Below this share two designs under the same weather are not told apart; their common errors are out of the difference. Judgement. [-] */
const SAME = 0.02;
/** Households may differ by rounding of double precision alone. [-] */
const SAME_HOUSE = 1e-9;

/** How near two are the same: two hundredths of what is at stake, or one step of what is shown. */
function grain(best: Candidate, context: AnswerContext): number {
  if (!context.costed) {
    const step =
      Math.abs(savedOf(best)) / Math.max(Math.abs(fuelWords(savedOf(best), best, context.units).value), 1e-9);
    return Math.max(SAME * Math.abs(savedOf(best)), step);
  }
  const { worthOfSavings, life } = best.money!;
  const yearly = context.candidates.every(({ options }) => options!.life === life)
    ? 1
    : presentWorthFactor(life, best.options!.discountRate);
  return Math.max((SAME * Math.abs(worthOfSavings)) / yearly, 1);
}

/** Designs run with other weather, or for another household, cannot be held against each other. */
function incomparable({ candidates }: AnswerContext): Answer | null {
  const [first, ...others] = candidates;
  const of = (test: (one: Candidate) => boolean): string[] => others.filter(test).map(({ letter }) => letter);
  const weather = of(
    ({ summary }) =>
      summary.weatherSource !== first!.summary.weatherSource || summary.site.name !== first!.summary.site.name,
  );
  const asked = first!.summary.year.tapHeatAsked;
  const house = of(({ summary }) => Math.abs(summary.year.tapHeatAsked - asked) > SAME_HOUSE * Math.abs(asked));
  const answer = (who: readonly string[], why: string, decides: string): Answer => ({
    rule: 'not-comparable',
    does: `These designs cannot be compared: ${joinWords(who)} ${who.length === 1 ? 'was' : 'were'} run ${why}.`,
    decides,
    winner: null,
  });
  if (weather.length > 0) return answer(weather, 'with other weather', 'Run all of them with the same weather file.');
  if (house.length > 0) return answer(house, 'for another household', 'Run all of them for the same use of water.');
  return null;
}

/** Dangers of a design that not all have. */
const ownDangers = ({ dangers }: Candidate, all: readonly Candidate[]): Candidate['dangers'] =>
  dangers.filter(({ code }) => !all.every((one) => one.dangers.some((other) => other.code === code)));

function dangerAnswer(context: AnswerContext, ranked: readonly Candidate[]): Answer | null {
  const { candidates, units } = context;
  const safe = ranked.filter((one) => ownDangers(one, candidates).length === 0);
  const [winner] = safe;
  // An unsafe one that is better than the best of the safe ones, or as good.
  const least = winner === undefined ? Number.NEGATIVE_INFINITY : deciding(winner, context) - grain(winner, context);
  const best = ranked.find((one) => !safe.includes(one) && deciding(one, context) > least);
  if (best === undefined) return null;
  const reason = ownDangers(best, candidates)[0]!.short;
  if (winner === undefined)
    return {
      rule: 'danger-in-each',
      does: `None can be built as it stands: in ${best.letter} ${reason}.`,
      decides: 'See the dangers of each below; what is put right can be compared again.',
      winner: null,
    };
  const name = nameOf(winner, candidates);
  const more = fuelWords(savedOf(best) - savedOf(winner), winner, units);
  const other = nameOf(best, candidates);
  return {
    rule: 'danger-in-some',
    does: `${capital(name)} ${isOrAre(name)} the one to build: ${savedWords(winner, units)} saved a year.`,
    decides:
      more.value > 0 && more.number !== '0'
        ? `${capital(other)} would save ${more.number} more, but ${reason}.`
        : `${capital(other)} cannot be built as it stands: ${reason}.`,
    winner: winner.index,
  };
}

function tieAnswer(context: AnswerContext, tied: readonly Candidate[]): Answer {
  const { units, costed } = context;
  const [a, b] = tied as readonly [Candidate, Candidate];
  const letters = tied.map(({ letter }) => letter);
  const numbers = tied.map((one) => fuelWords(savedOf(one), one, units));
  const does = `${joinWords(letters)} ${costed ? 'are worth the same' : 'do the same'}: ${joinWords(numbers.map(({ number }) => number))} ${numbers[0]!.unit} a year.`;
  const costOf = ({ money }: Candidate): number => money!.cases[0]!.investment;
  if (costed) {
    const [cheap, dear] = costOf(a) <= costOf(b) ? [a, b] : [b, a];
    const gap = costOf(dear) - costOf(cheap);
    if (gap > 0)
      return {
        rule: 'tie',
        does,
        decides: `${cheap.letter} costs ${currencyWords(gap, a.money!.currency)} less to build.`,
        winner: cheap.index,
      };
  }
  const byIdle = [...tied].sort((x, y) => idleHours(x.summary) - idleHours(y.summary));
  const [calm, hot] = [byIdle[0]!, byIdle.at(-1)!];
  const [few, many] = [aboutHours(idleHours(calm.summary)), aboutHours(idleHours(hot.summary))];
  return few === many
    ? { rule: 'tie', does, decides: 'Take the one that is easier to build.', winner: null }
    : {
        rule: 'tie',
        does,
        decides: `${calm.letter} stands hot without use for ${few} a year, ${hot.letter} for ${many}.`,
        winner: calm.index,
      };
}

/** The answer for several designs. */
export function answerSeveral(context: AnswerContext): Answer {
  const refused = incomparable(context);
  if (refused !== null) return refused;
  const ranked = [...context.candidates].sort(
    (a, b) => deciding(b, context) - deciding(a, context) || a.index - b.index,
  );
  const danger = dangerAnswer(context, ranked);
  if (danger !== null) return danger;
  const free = ranked.filter((one) => ownDangers(one, context.candidates).length === 0);
  const top = free[0]!;
  const least = deciding(top, context) - grain(top, context);
  const tied = free.filter((one) => deciding(one, context) > least);
  if (tied.length > 1)
    return tieAnswer(
      context,
      [...tied].sort((a, b) => a.index - b.index),
    );
  const others = ranked.filter((one) => one !== top);
  return context.costed ? worthAnswer(context, [top, ...others]) : savingAnswer(context, [top, ...others]);
}

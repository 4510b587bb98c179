/** The two sentences about several designs. */
import { presentWorthFactor } from '../money/factors.ts';
import { joinWords } from './join.ts';
import { aboutHours, countYears, idleHours } from './one.ts';
import type { Answer, AnswerContext, Candidate } from './types.ts';
import {
  addedPart,
  capital,
  currencyWords,
  fuelWords,
  isOrAre,
  nameOf,
  onlyPanels,
  savedWords,
  shareWords,
  verb,
  yearsWords,
} from './words.ts';

/** Below this share two designs under the same weather are not told apart; their common errors are out of the difference. Judgement. [-] */
const SAME = 0.02;
/** Households may differ by rounding of double precision alone. [-] */
const SAME_HOUSE = 1e-9;

const savedOf = ({ summary }: Candidate): number => summary.year.fuelSaved;

/** Net present value; by the year where lives differ, so that a longer life wins nothing by itself. [currency or currency/a] */
function worthOf(candidate: Candidate, all: readonly Candidate[]): number {
  const value = candidate.money!.cases[0]!.netPresentValue;
  const { life, discountRate } = candidate.options!;
  return all.every(({ options }) => options!.life === life) ? value : value / presentWorthFactor(life, discountRate);
}

/** What the designs are judged by, the most the best. */
const deciding = (candidate: Candidate, { candidates, costed }: AnswerContext): number =>
  costed ? worthOf(candidate, candidates) : savedOf(candidate);

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

/** What one design beside the winner adds for its cost; where the winner is the larger, what it adds itself. */
function margin(winner: Candidate, other: Candidate, { units, candidates }: AnswerContext): string {
  const costOf = ({ money }: Candidate): number => money!.cases[0]!.investment;
  const larger = savedOf(winner) > savedOf(other);
  const [small, large] = larger ? [other, winner] : [winner, other];
  const { currency } = winner.money!;
  const gain = fuelWords(savedOf(large) - savedOf(small), winner, units);
  const unit = gain.unit.split(' ')[0];
  const extra = costOf(large) - costOf(small);
  const cost = currencyWords(Math.abs(extra), currency);
  if (extra <= 0) {
    const name = nameOf(other, candidates);
    const dearer =
      extra === 0 ? verb(name, 'costs as much', 'cost as much') : `${verb(name, 'costs', 'cost')} ${cost} more`;
    return larger
      ? `${capital(name)} ${dearer} and would save ${gain.number} ${unit} a year less.`
      : `${capital(name)} would save ${gain.number} ${unit} a year more, and upkeep takes it.`;
  }
  const added = capital(addedPart(small, large));
  const years = earnedIn(small, large, extra);
  const yearly = currencyWords(large.money!.energySaving - small.money!.energySaving, currency);
  const more = `${gain.number} ${unit} more, about ${yearly} a year`;
  if (years === null) {
    const life = countYears(large.options!.life);
    return `${added} would save ${more}, and not earn ${verb(added, 'its', 'their')} ${cost} in ${life}.`;
  }
  return larger
    ? `${added} ${verb(added, 'saves', 'save')} ${more}: ${verb(added, 'its', 'their')} ${cost} are earned in ${yearsWords(years)}.`
    : `${added} would save ${more}, and take ${yearsWords(years)} to earn ${verb(added, 'its', 'their')} ${cost}.`;
}

/** When what a design saves beyond another has earned its extra cost. [a] */
function earnedIn(from: Candidate, to: Candidate, extra: number): number | null {
  let gained = 0;
  const years = to.money!.years;
  for (const { year, presentValue } of years) {
    const more = presentValue - (from.money!.years[year - 1]?.presentValue ?? 0);
    if (gained + more >= extra) return year - 1 + (extra - gained) / more;
    gained += more;
  }
  return null;
}

function worthAnswer(context: AnswerContext, ranked: readonly Candidate[]): Answer {
  const { units, candidates } = context;
  const best = ranked[0]!;
  const [paid] = best.money!.cases;
  const { currency, life } = best.money!;
  if (paid!.netPresentValue <= 0) {
    const loss = currencyWords(-paid!.netPresentValue, currency);
    return {
      rule: 'none-pays',
      does: `None pays for itself; ${nameOf(best, candidates)} ${verb(nameOf(best, candidates), 'loses', 'lose')} least, ${loss} in ${countYears(life)}.`,
      decides: `It pays if it costs less than about ${currencyWords(best.money!.worthOfSavings, currency)}, built.`,
      winner: null,
    };
  }
  const name = nameOf(best, candidates);
  const next =
    ranked.length > 2
      ? ` Next is ${nameOf(ranked[1]!, candidates)}, worth ${currencyWords(deciding(best, context) - deciding(ranked[1]!, context), currency)} less.`
      : '';
  const buy = ranked.length > 2 ? 'best' : 'better';
  // The best step upward; without one, what the runner-up leaves.
  const upward = ranked.filter((one) => savedOf(one) > savedOf(best))[0] ?? ranked[1]!;
  return {
    rule: 'worth',
    does: `${capital(name)} ${isOrAre(name)} the ${buy} buy: ${savedWords(best, units)} saved a year, paid back in ${yearsWords(paid!.discountedPayback!)}.${next}`,
    decides: margin(best, upward, context),
    winner: best.index,
  };
}

function savingAnswer(context: AnswerContext, ranked: readonly Candidate[]): Answer {
  const { units } = context;
  const [best, other] = ranked as readonly [Candidate, Candidate];
  const gain = fuelWords(savedOf(best) - savedOf(other), best, units);
  const numbers = [best, other].map((one) => fuelWords(savedOf(one), one, units).number);
  const does = `${best.letter} saves ${gain.number} ${gain.unit} a year more than ${other.letter}, ${numbers[0]} against ${numbers[1]}.`;
  if (best.money !== null && other.money !== null) {
    const worth = best.money.worthOfSavings - other.money.worthOfSavings;
    const added = addedPart(other, best);
    const less = `less than about ${currencyWords(worth, best.money.currency)}`;
    return {
      rule: 'saving-with-price',
      does,
      decides:
        worth <= 0
          ? 'What it saves more, its upkeep takes.'
          : added === best.letter
            ? `It is worth it if ${added} costs ${less} more than ${other.letter}, built.`
            : `It is worth it if ${added} costs ${less}, built.`,
      winner: best.index,
    };
  }
  return { rule: 'saving-without-prices', does, decides: addedShare(best, other), winner: best.index };
}

/** What an added panel gives beside those before it; else what the sun makes in each. */
function addedShare(best: Candidate, other: Candidate): string {
  const before = other.summary.design.array.panels;
  const added = best.summary.design.array.panels - before;
  const mean = other.summary.year.deliveredEnergy / before;
  if (onlyPanels(other, best) && added > 0 && mean > 0) {
    const gain = (best.summary.year.deliveredEnergy - other.summary.year.deliveredEnergy) / added;
    const who = capital(addedPart(other, best));
    const firsts = before === 1 ? 'the first gives' : `each of the first ${before} gives`;
    return `${who} ${added === 1 ? 'adds' : 'each add'} ${shareWords(gain / mean)} what ${firsts}.`;
  }
  const percent = ({ summary }: Candidate): string => `${Math.round(100 * (summary.year.sunShare ?? 0))} %`;
  return `The sun makes ${percent(best)} of the hot water in ${best.letter}, ${percent(other)} in ${other.letter}.`;
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

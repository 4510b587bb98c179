/** Several designs by what they are worth or save: the winner, and what the next step would bring. */
import { presentWorthFactor } from '../money/factors.ts';
import { countYears } from './one.ts';
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

/** Fuel that a design saves in a year. [J] */
export const savedOf = ({ summary }: Candidate): number => summary.year.fuelSaved;

/** Net present value; by the year where lives differ, so that a longer life wins nothing by itself. [currency or currency/a] */
function worthOf(candidate: Candidate, all: readonly Candidate[]): number {
  const value = candidate.money!.cases[0]!.netPresentValue;
  const { life, discountRate } = candidate.options!;
  return all.every(({ options }) => options!.life === life) ? value : value / presentWorthFactor(life, discountRate);
}

/** What the designs are judged by, the most the best. */
export const deciding = (candidate: Candidate, { candidates, costed }: AnswerContext): number =>
  costed ? worthOf(candidate, candidates) : savedOf(candidate);

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

/** The better buy, or that none pays. */
export function worthAnswer(context: AnswerContext, ranked: readonly Candidate[]): Answer {
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

/** What one saves beyond the other, and what that is worth. */
export function savingAnswer(context: AnswerContext, ranked: readonly Candidate[]): Answer {
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

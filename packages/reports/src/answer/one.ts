/** The two sentences about one design. */
import { MONTH_NAMES } from '../calendar.ts';
import type { Money } from '../money/types.ts';
import type { Summary } from '../summary.ts';
import { formatNumber, formatQuantity, type Units } from '../units.ts';
import type { Answer, AnswerContext, Candidate } from './types.ts';
import { countWords, currencyWords, dayWords, fuelWords, savedWords, yearsWords } from './words.ts';

/** Hours without use from which they are worth the second sentence. Judgement: two days of sun. [h] */
const IDLE = 20;

/** Hot and useless hours: stopped by the limit, or stagnating. [h] */
export const idleHours = ({ year }: Summary): number => year.highLimitHours + year.stagnationHours;

/** `about 50 hours`; hours of events are known to no more than tens. */
export function aboutHours(hours: number): string {
  if (hours < 1) return 'no hours';
  const rounded =
    hours < 10 ? Math.round(hours) : hours < 300 ? 10 * Math.round(hours / 10) : 50 * Math.round(hours / 50);
  return `about ${formatNumber(rounded, 0)} hour${rounded === 1 ? '' : 's'}`;
}

/** `The sun makes 62 % of this house's hot water and saves 84 gallons of propane a year, about $260.` */
function does(candidate: Candidate, units: Units): string {
  const { summary, money } = candidate;
  const { sunShare } = summary.year;
  const saves = `saves ${savedWords(candidate, units)} a year`;
  const worth = money === null ? '' : `, about ${currencyWords(money.energySaving, money.currency)}`;
  const makes =
    sunShare === null ? 'The sun' : `The sun makes ${formatNumber(100 * sunShare, 0)} % of this house’s hot water and`;
  return `${makes} ${saves}${worth}.`;
}

const LOSSES = { tankLoss: 'the tank', pipeLoss: 'the pipes', reliefHeat: 'the relief valve' } as const;

function losing(candidate: Candidate, units: Units): Answer {
  const { year, design } = candidate.summary;
  const { number, unit } = fuelWords(-year.fuelSaved, candidate, units);
  const verb = design.heater.carrier === 'electricity' ? 'takes' : 'burns';
  const largest = (Object.keys(LOSSES) as (keyof typeof LOSSES)[]).reduce((a, b) => (year[b] > year[a] ? b : a));
  return {
    rule: 'one-loses',
    does:
      number === '0'
        ? 'It saves nothing against the heater alone.'
        : `It ${verb} ${number} ${unit} a year more than the heater alone.`,
    decides: `Most is lost by ${LOSSES[largest]}: ${formatQuantity(year[largest], 'energy', units)} a year.`,
    winner: null,
  };
}

/** When it has paid for itself, for the first investment given. */
function paidBack({ cases, currency, life }: Money): string {
  const { parts, investment, discountedPayback, netPresentValue } = cases[0]!;
  const price = `${currencyWords(investment, currency)}${parts === 'used' ? ', with used parts,' : ''}`;
  if (discountedPayback !== null) return `At ${price} it has paid for itself in ${yearsWords(discountedPayback)}.`;
  const missing = currencyWords(-netPresentValue, currency);
  return `At ${price} it does not pay for itself in its ${countYears(life)}: ${missing} are missing.`;
}

/** `15 years`. */
export const countYears = (years: number): string => `${years} year${years === 1 ? '' : 's'}`;

function breakEven({ worthOfSavings, currency, life }: Money): string {
  return worthOfSavings > 0
    ? `It pays within ${countYears(life)} if it costs less than about ${currencyWords(worthOfSavings, currency)}, built.`
    : 'Its upkeep costs more than it saves.';
}

/** Without prices: hours without use, else the hottest tank, else the least month. */
function withoutPrices({ summary }: Candidate, units: Units): string {
  const { design, months, year } = summary;
  const idle = idleHours(summary);
  if (idle >= IDLE) return `For ${aboutHours(idle)} a year it stands hot in the sun without use.`;
  if (year.peakTankTemperature >= design.tank.ratedTemperature)
    return `The tank is hottest on ${dayWords(year.peakTankHour)}, ${formatQuantity(year.peakTankTemperature, 'temperature', units)}.`;
  const shares = months.map(({ sunShare }) => sunShare ?? Number.POSITIVE_INFINITY);
  const least = shares.indexOf(Math.min(...shares));
  return Number.isFinite(shares[least]!)
    ? `It makes least in ${MONTH_NAMES[least]}, ${formatNumber(100 * shares[least]!, 0)} % of the hot water.`
    : `It runs in ${countWords(0)} month for hot water: none is asked for.`;
}

/** The answer for one design. */
export function answerOne({ candidates, units }: AnswerContext): Answer {
  const candidate = candidates[0]!;
  const { money, summary } = candidate;
  if (summary.year.fuelSaved <= 0) return losing(candidate, units);
  const sentence = { does: does(candidate, units), winner: null };
  if (money === null) return { rule: 'one-without-prices', ...sentence, decides: withoutPrices(candidate, units) };
  if (money.cases.length === 0) return { rule: 'one-with-price', ...sentence, decides: breakEven(money) };
  return { rule: 'one-with-cost', ...sentence, decides: paidBack(money) };
}

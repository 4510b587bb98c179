/** What money is reckoned from, in sentences. */
import { displayUnit, formatNumber, type Units } from '../units.ts';
import { UNIT_WORDS } from './fuels.ts';
import { type EnergyPrice, type ResolvedPrice, resolvePrice } from './prices.ts';
import type { MoneyOptions } from './types.ts';

const percent = (rate: number): string => `${formatNumber(100 * rate, 1)} %`;

/** As given, without trailing noughts. */
const asGiven = (value: number): string =>
  formatNumber(value, 4)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

const rise = (escalation: number, inflation: number | undefined): string => {
  if (escalation === (inflation ?? 0))
    return inflation === undefined ? 'rising as all prices do' : 'rising with inflation';
  const word = `${escalation < 0 ? 'falling' : 'rising'} ${percent(Math.abs(escalation))} a year`;
  return inflation === undefined ? `${word} beyond inflation` : word;
};

function priceLine(purpose: string, price: EnergyPrice, options: MoneyOptions, units: Units): string {
  const { word, joules, contentSource, escalation } = resolvePrice(price, options.inflation ?? 0);
  const { symbol, scale } = displayUnit('fuel', units);
  const digits = joules * scale < 1 ? 3 : 1;
  const calorific =
    contentSource === ''
      ? ''
      : `, ${formatNumber(joules * scale, digits)} ${symbol} by gross calorific value in each (${contentSource})`;
  const unit = UNIT_WORDS[price.per][0];
  return `${purpose}: ${word} at ${asGiven(price.price)} ${options.currency} per ${unit}${calorific}, ${rise(escalation, options.inflation)}.`;
}

function carbonLine({ word, co2PerJoule, co2Source, biogenic }: ResolvedPrice, units: Units): string {
  if (co2PerJoule === null)
    return `No factor was given for the carbon dioxide of ${word}; none is guessed, as each place has its own.`;
  const [mass, energy] = [displayUnit('mass', units), displayUnit('fuel', units)];
  const factor = (co2PerJoule * mass.scale) / energy.scale;
  const ofWood = biogenic
    ? ' It is what leaves the chimney; the tree took it from the air, and accounts of nations list it apart.'
    : '';
  return `Carbon dioxide of ${word}: ${formatNumber(factor, 3)} ${mass.symbol} per ${energy.symbol} (${co2Source}).${ofWood}`;
}

/** Prices, rates and factors, a sentence each. Text of the reader's own in it is not escaped. @internal */
export function describeMoney(options: MoneyOptions, units: Units): string[] {
  const { currency, fuel, baselineFuel, electricity, discountRate, inflation, life } = options;
  const { maintenance = 0, maintenanceEscalation = inflation ?? 0 } = options;
  const lines = [priceLine('Backup heater', fuel, options, units)];
  if (baselineFuel !== undefined) lines.push(priceLine('Heater without the sun', baselineFuel, options, units));
  if (electricity !== undefined) lines.push(priceLine('Pump and controls', electricity, options, units));
  const rates =
    inflation === undefined
      ? `Discount rate ${percent(discountRate)} a year above inflation: all rates are real, and money is that of today.`
      : `Discount rate ${percent(discountRate)} a year with inflation of ${percent(inflation)} in it: all rates are nominal.`;
  lines.push(
    `Upkeep: ${asGiven(maintenance)} ${currency} in the first year${maintenance === 0 ? '' : `, ${rise(maintenanceEscalation, inflation)}`}.`,
    `${rates} ${life} ${life === 1 ? 'year is' : 'years are'} reckoned. Payments fall at the end of each year, those of the first at today’s prices; every year is like the simulated one; nothing is sold at the end.`,
  );
  const carbon = [fuel, baselineFuel, electricity]
    .filter((price) => price !== undefined)
    .map((price) => carbonLine(resolvePrice(price, inflation ?? 0), units));
  return [...lines, ...new Set(carbon)];
}

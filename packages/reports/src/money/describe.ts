/** What money is reckoned from, in sentences. */
import { displayUnit, formatNumber, type Units } from '../units.ts';
import { type EnergyPrice, type ResolvedPrice, resolvePrice } from './prices.ts';
import type { MoneyOptions } from './types.ts';

const percent = (rate: number): string => `${formatNumber(100 * rate, 1)} %`;

/** As given, without trailing noughts. */
const asGiven = (value: number): string =>
  formatNumber(value, 4)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

const rise = (escalation: number): string =>
  escalation === 0
    ? 'the same every year'
    : `${escalation < 0 ? 'falling' : 'rising'} ${percent(Math.abs(escalation))} a year`;

function priceLine(purpose: string, price: EnergyPrice, currency: string, units: Units): string {
  const { word } = resolvePrice(price, 'money');
  const { grossCalorificValue_kWh: content } = price;
  const { symbol, scale } = displayUnit('fuel', units);
  const calorific =
    content === undefined
      ? ''
      : `, ${formatNumber(content * 3.6e6 * scale, units === 'us' ? 3 : 2)} ${symbol} by gross calorific value in each`;
  const unit = price.per.replace('3', '³');
  return `${purpose}: ${word} at ${asGiven(price.price)} ${currency} per ${unit}${calorific}, ${rise(price.escalation ?? 0)}.`;
}

function carbonLine({ word, co2PerJoule, co2Source }: ResolvedPrice, units: Units): string {
  if (co2PerJoule === null)
    return `No factor was given for the carbon dioxide of ${word}; none is guessed, as grids differ.`;
  const [mass, energy] = [displayUnit('mass', units), displayUnit('fuel', units)];
  const factor = (co2PerJoule * mass.scale) / energy.scale;
  return `Carbon dioxide of ${word}: ${formatNumber(factor, 3)} ${mass.symbol} per ${energy.symbol} (${co2Source}).`;
}

/** Prices, rates and factors, a sentence each. Text of the reader's own in it is not escaped. @internal */
export function describeMoney(options: MoneyOptions, units: Units): string[] {
  const { currency, fuel, baselineFuel, electricity, discountRate, life } = options;
  const { maintenance = 0, maintenanceEscalation = 0 } = options;
  const lines = [priceLine('Backup heater', fuel, currency, units)];
  if (baselineFuel !== undefined) lines.push(priceLine('Heater without the sun', baselineFuel, currency, units));
  if (electricity !== undefined) lines.push(priceLine('Pump and controls', electricity, currency, units));
  lines.push(
    `Upkeep: ${asGiven(maintenance)} ${currency} in the first year${maintenance === 0 ? '' : `, ${rise(maintenanceEscalation)}`}.`,
    `Discount rate ${percent(discountRate)} a year over ${life} ${life === 1 ? 'year' : 'years'}. Payments fall at the end of each year, those of the first at today’s prices; every year is like the simulated one; nothing is sold at the end.`,
  );
  const carbon = [fuel, baselineFuel, electricity]
    .filter((price) => price !== undefined)
    .map((price) => carbonLine(resolvePrice(price, 'money'), units));
  return [...lines, ...new Set(carbon)];
}

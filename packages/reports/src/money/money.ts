import type { RunResult, SystemDesign } from '@noonloop/sim-core';
import { ReportError } from '../errors.ts';
import { type PeriodSummary, summarize } from '../summary.ts';
import { checkPrices } from './check.ts';
import { describeMoney } from './describe.ts';
import { worth } from './factors.ts';
import { billedWords, type ResolvedPrice, resolvePrice } from './prices.ts';
import type { BilledFuel, Money, MoneyCase, MoneyOptions, MoneyYear } from './types.ts';

/** Rates between which an internal rate of return is sought. [-] */
const RATES = [-0.99, 10] as const;

/** A yearly payment that rises. */
interface Flow {
  /** At the end of the first year; a cost is negative. [currency] */
  readonly first: number;
  readonly escalation: number;
}

/** Present worth of flows. [currency] */
const worthOf = (flows: readonly Flow[], years: number, rate: number): number =>
  flows.reduce((sum, { first, escalation }) => sum + first * worth(years, rate, escalation), 0);

/**
 * Whether a system pays: payback, net present value, internal rate of return, levelised cost of heat, and carbon dioxide.
 *
 * Every year is like the simulated one. Payments fall at the end of each year, those of year 1 at today's prices; later ones
 * rise by their escalation. Rates are real, or nominal where `inflation` is given: it is in all of them or in none.
 *
 * @param result - a run
 * @param options - prices, investment, discount rate and life
 * @throws {@link ReportError} for a number out of range, a carrier that the heater does not take, or electricity without a price.
 * @see Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed. (2013), chapter 11; from memory
 */
export function money(result: RunResult, options: MoneyOptions): Money {
  checkPrices(options);
  const { currency, discountRate, life, inflation = 0, maintenance = 0, maintenanceEscalation = inflation } = options;
  const { design } = result;
  const { year } = summarize(result);
  const electricityWith = year.pumpElectricity + year.heaterElectricity;
  const electricityWithout = year.baselineElectricity;
  const fuel = resolvePrice(options.fuel, inflation);
  const baseline = options.baselineFuel === undefined ? fuel : resolvePrice(options.baselineFuel, inflation);
  checkCarrier(fuel, design.heater, 'money.fuel');
  checkCarrier(baseline, design.baseline, 'money.baselineFuel');
  const electricity = electricityPrice(options, fuel, electricityWith + electricityWithout);

  const flows: Flow[] = [
    { first: year.baselineFuel * baseline.perJoule, escalation: baseline.escalation },
    { first: -year.heaterFuel * fuel.perJoule, escalation: fuel.escalation },
  ];
  let pump: Flow = { first: 0, escalation: 0 };
  if (electricity !== null) {
    const first = (electricityWithout - electricityWith) * electricity.perJoule;
    flows.push({ first, escalation: electricity.escalation });
    pump = { first: year.pumpElectricity * electricity.perJoule, escalation: electricity.escalation };
  }
  const upkeep: Flow = { first: -maintenance, escalation: maintenanceEscalation };
  const power = electricity?.perJoule ?? 0;
  const billWithout = year.baselineFuel * baseline.perJoule + electricityWithout * power;
  const billWith = year.heaterFuel * fuel.perJoule + electricityWith * power;
  const years = Array.from({ length: life }, (_, index): MoneyYear => {
    const at = ({ first, escalation }: Flow): number => first * (1 + escalation) ** index;
    const energySaving = flows.reduce((total, flow) => total + at(flow), 0);
    const cost = -at(upkeep);
    return {
      year: index + 1,
      energySaving,
      maintenance: cost,
      presentValue: (energySaving - cost) / (1 + discountRate) ** (index + 1),
    };
  });

  const net = [...flows, upkeep];
  const worthOfSavings = worthOf(net, life, discountRate);
  const heat = year.deliveredEnergy * worth(life, discountRate, 0);
  const costs = worthOf([{ ...upkeep, first: maintenance }, pump], life, discountRate);
  const reckon = (parts: 'new' | 'used', investment: number): MoneyCase => {
    const firstYear = net.reduce((total, { first }) => total + first, 0);
    return {
      parts,
      investment,
      simplePayback: firstYear > 0 ? investment / firstYear : null,
      discountedPayback: payback(years, investment),
      netPresentValue: worthOfSavings - investment,
      internalRateOfReturn: rateOfReturn(net, life, investment),
      levelisedCostOfHeat: heat > 0 ? (investment + costs) / heat : null,
    };
  };
  const costOf = typeof options.investment === 'number' ? { new: options.investment } : (options.investment ?? {});
  const carbon = (energy: number, { co2PerJoule }: ResolvedPrice, power: number): number | null => {
    if (co2PerJoule === null) return null;
    if (power === 0) return energy * co2PerJoule;
    return electricity?.co2PerJoule == null ? null : energy * co2PerJoule + power * electricity.co2PerJoule;
  };
  const co2With = carbon(year.heaterFuel, fuel, electricityWith);
  const co2Without = carbon(year.baselineFuel, baseline, electricityWithout);
  return {
    currency,
    fuel: billedFuel(year, fuel, baseline),
    billWith,
    billWithout,
    energySaving: billWithout - billWith,
    maintenance,
    life,
    worthOfSavings,
    // Upkeep and the pump's electricity are costs of the solar heat; what is left of the savings is what the heater would cost.
    levelisedCostOfFuelHeat: heat > 0 ? (worthOfSavings + costs) / heat : null,
    cases: (['new', 'used'] as const).flatMap((parts) => {
      const investment = costOf[parts];
      return investment === undefined ? [] : [reckon(parts, investment)];
    }),
    years,
    co2With,
    co2Without,
    co2Saved: co2With === null || co2Without === null ? null : co2Without - co2With,
    assumptions: describeMoney(options, 'metric'),
  };
}

function billedFuel(year: PeriodSummary, fuel: ResolvedPrice, baseline: ResolvedPrice): BilledFuel {
  const same = fuel.carrier === baseline.carrier && fuel.per === baseline.per && fuel.joules === baseline.joules;
  return {
    word: fuel.word,
    unit: fuel.per,
    with: year.heaterFuel / fuel.joules,
    without: same ? year.baselineFuel / fuel.joules : null,
    saved: same ? year.fuelSaved / fuel.joules : null,
    savedWords: same ? billedWords(year.fuelSaved, fuel) : null,
  };
}

/** A burner of no stated fuel may burn any in a report; one with a fuel burns that, and electric heaters take electricity only. */
function checkCarrier(
  { carrier }: ResolvedPrice,
  of: Pick<SystemDesign['heater'], 'carrier' | 'fuel'>,
  path: string,
): void {
  const electric = of.carrier === 'electricity';
  const fits = of.fuel === null ? (carrier === 'electricity') === electric : carrier === of.fuel;
  if (fits) return;
  throw new ReportError(
    `${path}.carrier`,
    carrier,
    of.fuel !== null
      ? `${of.fuel}, as the design’s heater has it (heater.fuel)`
      : electric
        ? 'electricity, which the heater draws'
        : 'a fuel, which the heater burns',
    'Price what the design’s heater takes; without and with the sun may differ (baselineFuel).',
  );
}

const ON_ELECTRICITY = { carrier: 'electricity', fuel: null } as const;

function electricityPrice(options: MoneyOptions, fuel: ResolvedPrice, used: number): ResolvedPrice | null {
  if (options.electricity !== undefined) {
    const price = resolvePrice(options.electricity, options.inflation ?? 0);
    checkCarrier(price, ON_ELECTRICITY, 'money.electricity');
    return price;
  }
  if (fuel.carrier === 'electricity') return fuel;
  if (used > 0)
    throw new ReportError(
      'money.electricity',
      'nothing',
      'a price, as pump or heater controls draw electricity in this run',
      'Give electricity: { carrier, price, per }.',
    );
  return null;
}

function payback(years: readonly MoneyYear[], investment: number): number | null {
  let gained = 0;
  if (investment <= 0) return 0;
  for (const { year, presentValue } of years) {
    if (gained + presentValue >= investment) return year - 1 + (investment - gained) / presentValue;
    gained += presentValue;
  }
  return null;
}

/** By halving, which needs no guess; 200 halvings of 11 end at the last bit. */
function rateOfReturn(flows: readonly Flow[], life: number, investment: number): number | null {
  const value = (rate: number): number => worthOf(flows, life, rate) - investment;
  let [low, high] = RATES as readonly [number, number];
  if (investment <= 0 || !(value(low) > 0) || !(value(high) < 0)) return null;
  for (let halving = 0; halving < 200; halving++) {
    const middle = (low + high) / 2;
    if (value(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

export { presentWorthFactor } from './factors.ts';
export { money } from './money.ts';
export type { BillUnit, EnergyPrice, PricedCarrier } from './prices.ts';
export type {
  BilledFuel,
  DesignPrices,
  Investment,
  Money,
  MoneyCase,
  MoneyGiven,
  MoneyOptions,
  MoneySettings,
  MoneyYear,
} from './types.ts';

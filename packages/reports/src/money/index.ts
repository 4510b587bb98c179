export { presentWorthFactor } from './factors.ts';
export { money } from './money.ts';
export type { BillUnit, EnergyPrice, PricedCarrier } from './prices.ts';
export type { Investment, Money, MoneyCase, MoneyOptions, MoneyYear } from './types.ts';

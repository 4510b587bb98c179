// Prices, for `--prices`. Their numbers are checked by the money of the reports; here stand their names, for editors.
import * as z from 'zod';
import { type BillUnit, FUELS, type PricedCarrier, UNIT_WORDS } from '../../money/fuels.ts';
import { fields, list, number, oneOf, text, whole } from './shapes.ts';

const words = <T extends string>(table: Readonly<Record<T, unknown>>) => Object.keys(table) as [T, ...T[]];

const energy = (meaning: string) =>
  fields(meaning, {
    carrier: oneOf('What is bought.', words<PricedCarrier>(FUELS)),
    price: number('Of one unit today. [currency]', 0),
    per: oneOf('Unit of the bill.', words<BillUnit>(UNIT_WORDS)),
    grossCalorificValue_kWh: number('Heat of one unit by the bill, for units of volume or mass. [kWh]', 0).optional(),
    escalation: number('Rise by the year, 0.02 for 2 %. Default as inflation. [-]', -1).optional(),
    co2_kg_per_kWh: number('Carbon dioxide of one kWh; needed for electricity. [kg]', 0).optional(),
    co2Source: text('Where that is from.').optional(),
  });

const ofDesign = {
  baselineFuel: energy('What the house without the sun burns, where that is another.').optional(),
  electricity: energy('Electricity of pump and controls.').optional(),
  investment: z
    .union([
      z.number(),
      z.strictObject({
        new: number('With new parts. [currency]', 0).optional(),
        used: number('With used parts. [currency]', 0).optional(),
      }),
    ])
    .meta({ description: 'What the system costs to buy and fit: a number, or { new, used }. [currency]' })
    .optional(),
  maintenance: number('Upkeep in the first year. Default 0. [currency]', 0).optional(),
  maintenanceEscalation: number('Rise of upkeep by the year. Default as inflation. [-]', -1).optional(),
};

const fuel = energy('What the backup heater is fed with.').optional();
const life = whole('Years that are reckoned, 1 to 100. [a]', 1, 100).optional();

/** Prices and expectations. */
export const pricesSchema = fields('Prices and expectations. What is left out is not reckoned.', {
  currency: text('Code of three capital letters, such as USD.'),
  fuel,
  ...ofDesign,
  discountRate: number('What money set aside would earn above inflation, or with it where inflation is given. [-]', -1),
  inflation: number('Rise of all prices by the year. Left out: all rates are above inflation. [-]', -1).optional(),
  life,
  designs: list(
    'What each design has of its own, in their order.',
    fields('Prices of one design.', { fuel, ...ofDesign, life }),
  ).optional(),
});

/** Prices as people write them, looked at field by field: every fault at once, with its place. */
import { type ReportIssue, refuseAll } from '../errors.ts';
import { nearest } from '../nearest.ts';
import { type BillUnit, contentOf, ENERGY_UNITS, FUELS, type PricedCarrier, unitsOf } from './fuels.ts';

/** Looks at one value and notes what is wrong with it. */
type Check = (value: unknown, path: string, issues: ReportIssue[]) => void;

/** Longest life reckoned. [a] */
const LONGEST_LIFE = 100;
/** A rate beyond this is a percentage written as a number; money that doubles each year is no plan for 20 years. Judgement. [-] */
const HIGHEST_RATE = 0.5;
/** How far a heating value may be from the common one before it is taken for another unit's: wet wood is the widest. Judgement. [-] */
const CONTENT_BAND = [0.6, 1.4] as const;
/** No fuel gives more at the chimney, per kWh; grids of coal reach 1.2. Judgement. [kg/kWh] */
const HIGHEST_CARBON = 2;

const written = (value: unknown): string => {
  const text = JSON.stringify(value);
  return text === undefined || value === undefined ? 'nothing' : text.length > 60 ? `${text.slice(0, 59)}…` : text;
};

const number =
  (test: (value: number) => boolean, expected: string, remedy: string): Check =>
  (value, path, issues) => {
    if (typeof value !== 'number' || !Number.isFinite(value) || !test(value))
      issues.push({ path, found: written(value), expected, remedy });
  };

const atLeastZero = (remedy: string): Check => number((value) => value >= 0, 'a number of at least 0', remedy);

const rate: Check = (value, path, issues) => {
  const isPercent = typeof value === 'number' && value > HIGHEST_RATE && value <= 100;
  number(
    (share) => share > -1 && share <= HIGHEST_RATE,
    `a fraction above −1 and at most ${HIGHEST_RATE}`,
    isPercent ? `Give ${value / 100} for ${value} % a year.` : 'Give 0.03 for 3 % a year.',
  )(value, path, issues);
};

const text: Check = (value, path, issues) => {
  if (typeof value !== 'string' || value.trim() === '')
    issues.push({ path, found: written(value), expected: 'text', remedy: 'Say it in words.' });
};

/** A map of fields; one that is not known is named with the nearest that is. */
function fields(
  value: unknown,
  path: string,
  known: Readonly<Record<string, Check>>,
  must: readonly string[],
  issues: ReportIssue[],
): boolean {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    issues.push({
      path,
      found: written(value),
      expected: `fields such as ${must[0] ?? Object.keys(known)[0]}`,
      remedy: 'Write a field and its value a line.',
    });
    return false;
  }
  const given = value as Record<string, unknown>;
  for (const name of Object.keys(given)) {
    const place = path === '' ? name : `${path}.${name}`;
    if (!Object.hasOwn(known, name)) {
      const guess = nearest(name, Object.keys(known));
      issues.push({
        path: place,
        found: 'an unknown field',
        expected: `one of ${Object.keys(known).join(', ')}`,
        remedy: guess === null ? 'Remove it, or correct its name.' : `Did you mean ${guess}?`,
      });
    } else if (given[name] !== undefined) known[name]!(given[name], place, issues);
  }
  for (const name of must)
    if (given[name] === undefined) known[name]!(undefined, path === '' ? name : `${path}.${name}`, issues);
  return true;
}

const carrier: Check = (value, path, issues) => {
  if (typeof value === 'string' && Object.hasOwn(FUELS, value)) return;
  const guess = typeof value === 'string' ? nearest(value, Object.keys(FUELS)) : null;
  issues.push({
    path,
    found: written(value),
    expected: `one of ${Object.keys(FUELS).join(', ')}`,
    remedy: guess === null ? 'Choose the nearest.' : `Did you mean ${guess}?`,
  });
};

const anything: Check = () => {};

const PRICE_FIELDS: Readonly<Record<string, Check>> = {
  carrier,
  price: atLeastZero('Give the price of one unit.'),
  per: anything,
  grossCalorificValue_kWh: anything,
  escalation: rate,
  co2_kg_per_kWh: number(
    (value) => value >= 0 && value <= HIGHEST_CARBON,
    `kilograms of carbon dioxide by the kWh, 0 to ${HIGHEST_CARBON}`,
    'Divide grams by 1000.',
  ),
  co2Source: text,
};

const energyPrice: Check = (value, path, issues) => {
  if (!fields(value, path, PRICE_FIELDS, ['carrier', 'price'], issues)) return;
  const given = value as Record<string, unknown>;
  if (typeof given.carrier !== 'string' || !Object.hasOwn(FUELS, given.carrier)) return;
  const of = given.carrier as PricedCarrier;
  const units = unitsOf(of);
  if (!units.includes(given.per as BillUnit)) {
    issues.push({
      path: `${path}.per`,
      found: written(given.per),
      expected: `one of ${units.join(', ')}, by which ${FUELS[of].word} is sold`,
      remedy: 'Choose the unit of the bill.',
    });
    return;
  }
  checkContent(of, given.per as BillUnit, given.grossCalorificValue_kWh, `${path}.grossCalorificValue_kWh`, issues);
};

function checkContent(of: PricedCarrier, per: BillUnit, value: unknown, path: string, issues: ReportIssue[]): void {
  const common = contentOf(of, per);
  if (common === null || ENERGY_UNITS[per] !== undefined) {
    if (value !== undefined)
      issues.push({
        path,
        found: written(value),
        expected: `nothing with a price by the ${per}`,
        remedy: 'It belongs to prices by volume or mass.',
      });
    return;
  }
  const digits = common.typical < 1 ? 3 : 1;
  const [least, most] = CONTENT_BAND.map((share) => (share * common.typical).toFixed(digits));
  const expected = `the heat in one ${per} of ${FUELS[of].word} by gross calorific value, ${least} to ${most} kWh`;
  if (value === undefined) {
    if (!common.holds)
      issues.push({
        path,
        found: 'nothing',
        expected,
        remedy:
          of === 'natural-gas'
            ? 'Gas differs from place to place; bills by the cubic metre state it, in kWh/m³ or MJ/m³ (divide by 3.6).'
            : 'The supplier states it.',
      });
    return;
  }
  if (
    typeof value !== 'number' ||
    !(value >= CONTENT_BAND[0] * common.typical && value <= CONTENT_BAND[1] * common.typical)
  )
    issues.push({
      path,
      found: written(value),
      expected,
      remedy: `Give it in kWh (1,000 Btu are 0.2931, 1 MJ is 0.2778), of one ${per}; commonly ${common.typical.toFixed(digits)}.`,
    });
}

const investment: Check = (value, path, issues) => {
  const cost = atLeastZero('Give what the system costs, built, less grants.');
  if (typeof value !== 'object' || value === null) return cost(value, path, issues);
  fields(value, path, { new: cost, used: cost }, [], issues);
  const { new: whole, used } = value as Record<string, unknown>;
  if (whole === undefined && used === undefined) cost(undefined, `${path}.new`, issues);
};

const life = number(
  (value) => Number.isInteger(value) && value >= 1 && value <= LONGEST_LIFE,
  `whole years from 1 to ${LONGEST_LIFE}`,
  'Give 20 for 20 years.',
);

const OF_DESIGN: Readonly<Record<string, Check>> = {
  fuel: energyPrice,
  baselineFuel: energyPrice,
  electricity: energyPrice,
  investment,
  maintenance: atLeastZero('Give the upkeep of a year.'),
  maintenanceEscalation: rate,
  life,
};

const currency: Check = (value, path, issues) => {
  if (typeof value !== 'string' || !/^[A-Z]{3}$/.test(value))
    issues.push({
      path,
      found: written(value),
      expected: 'a code of three capital letters',
      remedy: 'No currency is guessed; give one such as EUR.',
    });
};

const OF_ALL: Readonly<Record<string, Check>> = { currency, ...OF_DESIGN, discountRate: rate, inflation: rate };
const MUST = ['currency', 'fuel', 'discountRate', 'life'] as const;

const designs: Check = (value, path, issues) => {
  if (!Array.isArray(value)) {
    issues.push({
      path,
      found: written(value),
      expected: 'a list, one entry for each design in their order',
      remedy: 'Start each with a dash.',
    });
    return;
  }
  value.forEach((one, index) => {
    fields(one, `${path}[${index}]`, OF_DESIGN, [], issues);
  });
};

/**
 * Looks at one set of prices, with `designs` or without.
 *
 * @param value - as written
 * @param path - its place, such as `money`
 * @throws {@link ReportError} with every fault: unknown fields, missing ones, wrong units, percentages written as numbers.
 * @internal
 */
export function checkPrices(value: unknown, path = 'money'): void {
  const issues: ReportIssue[] = [];
  const own = typeof value === 'object' && value !== null ? (value as { designs?: unknown }).designs : undefined;
  // What every design brings with it need not stand above them.
  const must = MUST.filter(
    (name) =>
      !(
        Array.isArray(own) &&
        own.length > 0 &&
        own.every((one) => (one as Record<string, unknown> | null)?.[name] !== undefined)
      ),
  );
  fields(value, path, { ...OF_ALL, designs }, must, issues);
  refuseAll(issues);
}

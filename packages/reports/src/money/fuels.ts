/** What people heat with: heat in a unit of it, carbon dioxide, and where the figures are from. */

/** What a bill is for. */
export type PricedCarrier =
  | 'natural-gas'
  | 'propane'
  | 'lpg'
  | 'heating-oil'
  | 'kerosene'
  | 'wood'
  | 'wood-pellets'
  | 'district-heat'
  | 'electricity';

/** Unit of a bill: energy, or a volume or mass of fuel. `CCF` is a hundred cubic feet, `MMBtu` a million Btu (IT). */
export type BillUnit = 'kWh' | 'MJ' | 'GJ' | 'therm' | 'MMBtu' | 'm3' | 'CCF' | 'ft3' | 'L' | 'gal' | 'kg' | 'lb';

const MMBTU = 1055.05585262e6; // [J] NIST SP 811 (2008), appendix B
const KWH = 3.6e6; // [J]
const GALLON = 3.785411784; // [L] NIST SP 811
const POUND = 0.45359237; // [kg]
const CUBIC_FOOT = 0.028316846592; // [m³]

/** Units of energy. [J] Therm (US) and Btu (IT): NIST SP 811 (2008), appendix B. */
export const ENERGY_UNITS: Readonly<Partial<Record<BillUnit, number>>> = {
  kWh: KWH,
  MJ: 1e6,
  GJ: 1e9,
  therm: 105_480_400,
  MMBtu: MMBTU,
};

/** One unit of a bill as sentences have it: one, several. */
export const UNIT_WORDS: Readonly<Record<BillUnit, readonly [one: string, many: string]>> = {
  kWh: ['kWh', 'kWh'],
  MJ: ['MJ', 'MJ'],
  GJ: ['GJ', 'GJ'],
  therm: ['therm', 'therms'],
  MMBtu: ['million Btu', 'million Btu'],
  m3: ['m³', 'm³'],
  CCF: ['CCF', 'CCF'],
  ft3: ['cubic foot', 'cubic feet'],
  L: ['litre', 'litres'],
  gal: ['gallon', 'gallons'],
  kg: ['kg', 'kg'],
  lb: ['pound', 'pounds'],
};

/** Heat in one litre, kilogram or cubic metre by gross calorific value. */
interface Content {
  /** In the unit in which it is handled most. [kWh/L, kWh/kg or kWh/m³] */
  readonly typical: number;
  readonly source: string;
  /** Whether that may be taken where the reader gives none: it hardly differs from place to place. */
  readonly holds: boolean;
}

/** One thing to heat with. */
interface Fuel {
  readonly word: string;
  /** By volume of liquid, mass, volume of gas; those in which it is sold. */
  readonly litre?: Content;
  readonly kilogram?: Content;
  readonly cubicMetre?: Content;
  /** At the chimney, by gross calorific value; `null`: of a place and a year, none is guessed. [kg/J] */
  readonly co2: number | null;
  readonly co2Source: string;
  /** Whether that carbon dioxide is from wood, which grew by taking it from the air. */
  readonly biogenic: boolean;
}

const EPA = 'US 40 CFR part 98, table C-1, by gross calorific value';
const epa = (kilogramsPerMmbtu: number): Pick<Fuel, 'co2' | 'co2Source' | 'biogenic'> => ({
  co2: kilogramsPerMmbtu / MMBTU,
  co2Source: EPA,
  biogenic: false,
});
const perGallon = (mmbtu: number): Content => ({
  typical: (mmbtu * MMBTU) / KWH / GALLON,
  source: `${mmbtu} million Btu a gallon, ${EPA}`,
  holds: true,
});
const byMass = (typical: number, source: string, holds = true): Content => ({ typical, source, holds });

const NONE = { co2: null, co2Source: '', biogenic: false } as const;
const UK = 'UK government conversion factors for company reporting';

/** All of them. EPA: the table of December 2016; propane 0.091, No. 2 oil 0.138 (read), LPG 0.092, kerosene 0.135 MMBtu/gal (from memory). */
export const FUELS: Readonly<Record<PricedCarrier, Fuel>> = {
  'natural-gas': {
    word: 'natural gas',
    cubicMetre: {
      typical: (1.026e-3 * MMBTU) / KWH / CUBIC_FOOT,
      source: `0.001026 million Btu a cubic foot, ${EPA} (from memory)`,
      holds: false,
    },
    ...epa(53.06),
  },
  propane: {
    word: 'propane',
    litre: perGallon(0.091),
    kilogram: byMass(50.32 / 3.6, 'heat of combustion of propane at 25 °C, 50.32 MJ/kg'),
    ...epa(62.87),
  },
  lpg: {
    word: 'LPG',
    litre: perGallon(0.092),
    kilogram: byMass(49.9 / 3.6, 'between propane, 50.32, and butane, 49.51 MJ/kg'),
    ...epa(61.71),
  },
  'heating-oil': {
    word: 'heating oil',
    litre: perGallon(0.138),
    kilogram: byMass(12.6, 'judgement: 10.7 kWh/L at 0.85 kg/L', false),
    ...epa(73.96),
    co2Source: `${EPA} (distillate no. 2)`,
  },
  kerosene: {
    word: 'kerosene',
    litre: perGallon(0.135),
    kilogram: byMass(12.9, 'judgement: 10.4 kWh/L at 0.81 kg/L', false),
    ...epa(75.2),
  },
  wood: { word: 'firewood', kilogram: byMass(4.09, `air-dry logs, ${UK}`), ...epa(93.8), biogenic: true },
  'wood-pellets': { word: 'wood pellets', kilogram: byMass(4.8, `pellets, ${UK}`), ...epa(93.8), biogenic: true },
  'district-heat': { word: 'district heat', ...NONE },
  electricity: { word: 'electricity', ...NONE },
};

/** Units of volume or mass: which content, and how many of its units are in one. */
const AMOUNTS: Readonly<Partial<Record<BillUnit, readonly ['litre' | 'kilogram' | 'cubicMetre', number]>>> = {
  L: ['litre', 1],
  gal: ['litre', GALLON],
  kg: ['kilogram', 1],
  lb: ['kilogram', POUND],
  m3: ['cubicMetre', 1],
  ft3: ['cubicMetre', CUBIC_FOOT],
  CCF: ['cubicMetre', 100 * CUBIC_FOOT],
};

/** A hundred cubic feet are read off US meters, where the utility keeps the gas near one value; elsewhere gases differ. */
const US_METER: readonly BillUnit[] = ['CCF', 'ft3'];

/** Heat in one unit of a fuel as commonly given; `null` where it is not sold by it. [kWh] */
export function contentOf(
  carrier: PricedCarrier,
  per: BillUnit,
): { readonly typical: number; readonly source: string; readonly holds: boolean } | null {
  const amount = AMOUNTS[per];
  const content = amount === undefined ? undefined : FUELS[carrier][amount[0]];
  if (amount === undefined || content === undefined) return null;
  return {
    typical: content.typical * amount[1],
    source: content.source,
    holds: content.holds || US_METER.includes(per),
  };
}

/** Units in which a carrier is sold. */
export const unitsOf = (carrier: PricedCarrier): BillUnit[] =>
  (Object.keys(UNIT_WORDS) as BillUnit[]).filter(
    (unit) => ENERGY_UNITS[unit] !== undefined || contentOf(carrier, unit) !== null,
  );

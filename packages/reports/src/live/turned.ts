/** From what was turned to a design and prices. */
import { rateFromSurvey, type SurveyInput, type SystemDesign, type SystemInput } from '@noonloop/sim-core';
import type { EnergyPrice, Investment, MoneyOptions } from '../money/index.ts';
import { LEFT_OUT, type LivePrices, type LiveStart, type Plain, type Turned } from './types.ts';

type Fields = Record<string, Plain>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A name that a field may have; nothing of a prototype. */
const NAME = /^(?!constructor$|prototype$)[A-Za-z][A-Za-z0-9_]*$/;

/** Whether a place is one that may be set. */
export const isPlace = (path: string): boolean => path.split('.').every((name) => NAME.test(name));

/** Sets or takes away one field of a plain structure. */
function put(fields: Fields, path: string, value: Plain): void {
  const names = path.split('.');
  const last = names.pop()!;
  let at = fields;
  for (const name of names) {
    if (!isFields(at[name])) {
      if (value === LEFT_OUT) return;
      at[name] = {};
    }
    at = at[name] as Fields;
  }
  if (value === LEFT_OUT) delete at[last];
  else at[last] = value;
}

/** Fields before which something else has to go: the same thing said in another way. */
const INSTEAD: Readonly<Record<string, readonly string[]>> = {
  'draw.people': ['draw.dailyVolume', 'draw.volumes'],
  'draw.dailyVolume': ['draw.people', 'draw.volumePerPerson', 'draw.volumes'],
  'draw.profile': ['draw.hourlyShares', 'draw.volumes'],
};

/** All that was turned under a name, without it. */
const turnedUnder = (turned: Turned, name: string): Turned =>
  Object.fromEntries(
    Object.entries(turned).flatMap(([path, value]) =>
      path.startsWith(`${name}.`) ? [[path.slice(name.length + 1), value]] : [],
    ),
  );

/** Figures of a collector that a survey brings, in place of those of a report. */
function surveyed(fields: Fields, seen: Turned): void {
  const { collector } = rateFromSurvey(
    Object.fromEntries(Object.entries(seen).filter(([, value]) => value !== LEFT_OUT)) as unknown as SurveyInput,
  );
  put(fields, 'array.collector', {
    ...collector,
    incidenceModifier: { ...collector.incidenceModifier },
  } as unknown as Plain);
}

/** The design as a file would have it. @throws DesignError where a panel cannot be rated */
export function designFields(start: LiveStart, turned: Turned): SystemInput {
  const fields = structuredClone(start.design) as Fields;
  const seen = turnedUnder(turned, 'survey');
  if (Object.keys(seen).length > 0) surveyed(fields, seen);
  for (const [path, value] of Object.entries(turned)) {
    if (/^(prices|survey|page)\./.test(path) || !isPlace(path)) continue;
    if (value !== LEFT_OUT) for (const other of INSTEAD[path] ?? []) put(fields, other, LEFT_OUT);
    put(fields, path, value);
  }
  return fields as unknown as SystemInput;
}

/** What a page takes for prices where only fuel has one; shown in their fields. Judgement. */
const USUAL_PRICES = { discountRate: 0.03, life: 20 } as const;

const isNumber = (value: unknown): value is number => typeof value === 'number';

/** Prices as {@link MoneyOptions} has them; `null` without a price of what the heater takes. */
export function pricesOf(start: LiveStart, turned: Turned, design: SystemDesign): MoneyOptions | null {
  const fields = structuredClone(start.prices ?? {}) as Fields;
  const { panel, rest, ...own } = turnedUnder(turned, 'prices');
  for (const [path, value] of Object.entries(own)) if (isPlace(path)) put(fields, path, value);
  const { fuel, electricity, investment, ...others } = fields as unknown as LivePrices;
  const power: EnergyPrice | undefined =
    isFields(electricity) && electricity.price !== undefined ? { ...electricity, carrier: 'electricity' } : undefined;
  const electric = design.heater.carrier === 'electricity';
  const burnt =
    isFields(fuel) && (fuel as Partial<EnergyPrice>).price !== undefined ? (fuel as unknown as EnergyPrice) : undefined;
  const paid = electric ? (power ?? (burnt?.carrier === 'electricity' ? burnt : undefined)) : burnt;
  if (paid === undefined) return null;
  const cost = costOf(investment, panel, rest, design.array.panels);
  return {
    ...USUAL_PRICES,
    ...(others as Omit<MoneyOptions, 'fuel' | 'discountRate' | 'life'>),
    fuel: paid,
    ...(power === undefined ? {} : { electricity: power }),
    ...(cost === undefined ? {} : { investment: cost }),
  };
}

/** What it costs, built: as given, unless panels or the rest have a price of their own. */
function costOf(
  given: LivePrices['investment'],
  panel: Plain | undefined,
  rest: Plain | undefined,
  panels: number,
): number | Investment | undefined {
  const one = panel === LEFT_OUT ? undefined : panel;
  const whole = rest === LEFT_OUT ? undefined : rest;
  if (one === undefined && whole === undefined) return rest === LEFT_OUT ? undefined : given;
  const base = whole ?? (isNumber(given) ? given : (given?.new ?? given?.used ?? 0));
  // What is no number goes through as it is, and is refused with its place.
  if (!isNumber(base)) return base as unknown as number;
  if (one === undefined) return base;
  return isNumber(one) ? base + one * panels : (one as unknown as number);
}

/** Whether each design has its own cost. */
export const pricedByPanel = (turned: Turned): boolean => isNumber(turned['prices.panel']);

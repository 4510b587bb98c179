// What a packed sim-core carries in place of input/units.ts: the unit class of mathjs alone, a twentieth of the whole library.
// @ts-expect-error: factories that the library exports and does not declare
import { createFractionClass, createUnitClass } from 'mathjs';

interface Fraction {
  [operation: string]: (by: Operand) => Operand;
}
type Operand = number | Fraction;
type Make = (parts?: object) => never;

const FractionClass = (createFractionClass as Make)() as new (value: Operand) => Fraction;
const none = (): never => {
  throw new Error('numbers only');
};
/** Fahrenheit and Rankine are kept as the fraction 5/9; by fractions the results equal the whole library's in every bit. */
const by = (name: string, plain: (a: number, b: number) => number) => (a: Operand, b: Operand) =>
  typeof a === 'number' && typeof b === 'number' ? plain(a, b) : new FractionClass(a)[name]!(b);

const UnitClass = (createUnitClass as Make)({
  config: () => ({ number: 'number', predictable: false }),
  addScalar: by('add', (a, b) => a + b),
  subtractScalar: by('sub', (a, b) => a - b),
  multiplyScalar: by('mul', (a, b) => a * b),
  divideScalar: by('div', (a, b) => a / b),
  pow: by('pow', (a, b) => a ** b),
  abs: Math.abs,
  fix: Math.trunc,
  round: Math.round,
  equal: (a: number, b: number) => a === b,
  isNumeric: (a: unknown) => typeof a === 'number' || (a as { isFraction?: boolean } | null)?.isFraction === true,
  format: String,
  number: Number,
  Complex: none,
  BigNumber: none,
  Fraction: FractionClass,
}) as new (
  amount: number,
  name: string,
) => { toNumber(unit: string): number };

/** As input/units.ts has it. */
export const convertUnit = (amount: number, from: string, to: string): number =>
  new UnitClass(amount, from).toNumber(to);

/// <reference path="./mathjs.d.ts" />
// The one door to the unit library. Packing puts the library's unit class alone in this file's place (pack/unit-class.ts).
import math from 'mathjs/lib/browser/math.js';

/**
 * Converts an amount from one unit to another.
 *
 * @param amount - In `from`.
 * @param from - Unit as the library reads it, such as "gal/min".
 * @param to - Unit wanted.
 * @throws Error of the library, for an unknown unit or one of another dimension.
 */
export const convertUnit = (amount: number, from: string, to: string): number => math.unit(amount, from).toNumber(to);

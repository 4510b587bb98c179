// Pieces of the schemas of settings files: each says what it takes in one sentence, which is what an error quotes.
import * as z from 'zod';

/** What a field means, for editors; and what is expected, for errors. */
const described = <S extends z.ZodType>(schema: S, words: string): S => schema.meta({ description: words });

/** A number within bounds. */
export const number = (words: string, minimum = -1e15, maximum = 1e15) =>
  described(z.number().min(minimum).max(maximum), words);

/** A whole number within bounds. */
export const whole = (words: string, minimum: number, maximum: number) =>
  described(z.number().int().min(minimum).max(maximum), words);

/** A short text. */
export const text = (words: string) => described(z.string().min(1).max(400), words);

/** One of a few words. */
export const oneOf = <const T extends readonly [string, ...string[]]>(words: string, choices: T) =>
  described(z.enum(choices), words);

/** A number in the unit that the words name, or a text with a unit. */
export const quantity = (words: string) => described(z.union([z.number(), z.string().min(1).max(60)]), words);

/** Twelve numbers, January first. */
export const months = (words: string, minimum: number, maximum: number) =>
  described(z.array(z.number().min(minimum).max(maximum)).length(12), words);

/** A list. */
export const list = <S extends z.ZodType>(words: string, item: S, least = 1, most = 10_000) =>
  described(z.array(item).min(least).max(most), words);

/** Fields by a name of one's own. */
export const named = <S extends z.ZodType>(words: string, item: S) =>
  described(z.record(z.string().min(1).max(120), item), words);

/** Fields, each known by name. */
export const fields = <S extends z.core.$ZodLooseShape>(words: string, shape: S) =>
  described(z.strictObject(shape), words);

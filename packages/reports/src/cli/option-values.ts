// Values of options, read and refused by name.
import { EXIT, Refusal } from './exit-codes.ts';
import { faultsOf } from './in-words.ts';

/** A number of an option. */
export function numberOf(option: string, text: string): number {
  const value = Number(text.trim() === '' ? Number.NaN : text);
  if (Number.isFinite(value)) return value;
  throw new Refusal(EXIT.usage, [`--${option}: found "${text.slice(0, 40)}", expected a number.`]);
}

/** Twelve numbers. */
export function numbersOf(option: string, text: string): number[] {
  const values = text.split(/[,;\s]+/).filter((part) => part !== '');
  if (values.length !== 12)
    throw new Refusal(EXIT.usage, [`--${option}: found ${values.length} numbers, expected twelve, January first.`]);
  return values.map((value) => numberOf(option, value));
}

/** A number alone, or a text with a unit. */
export const quantityOption = (text: string): number | string => {
  const value = Number(text);
  return text.trim() !== '' && Number.isFinite(value) ? value : text;
};

const DAY = 86_400_000;

/** A day. @returns Milliseconds since 1970. */
export function dateOption(option: string, text: string): number {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  if (Number.isFinite(time) && new Date(time).toISOString().startsWith(text)) return time;
  throw new Refusal(EXIT.usage, [`--${option}: found "${text.slice(0, 40)}", expected a day such as 2025-10-01.`]);
}

/** Day of a year of 365 days, 0 for 1 January; 29 February counts as the 28th. */
export function dayOfYear(time: number): number {
  const date = new Date(time);
  const [month, day] = [date.getUTCMonth(), date.getUTCDate()];
  return Math.round((Date.UTC(2001, month, month === 1 ? Math.min(day, 28) : day) - Date.UTC(2001, 0, 1)) / DAY);
}

/** A temperature as an option, in °C. */
export function temperatureOption(option: string, text: string): number {
  const parts = /^\s*([+-]?\d+(?:\.\d+)?)\s*(degC|degF|°C|°F|C|F)?\s*$/.exec(text);
  if (parts === null)
    throw new Refusal(EXIT.usage, [
      `--${option}: found "${text.slice(0, 40)}", expected a temperature such as "5 degF".`,
    ]);
  const value = Number(parts[1]);
  return parts[2]?.endsWith('F') === true ? (value - 32) / 1.8 : value;
}

/** Faults of a field are faults of the option of the same name. */
export function ofOptions<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    const faults = faultsOf(error);
    if (faults === null) throw error;
    throw new Refusal(
      EXIT.usage,
      faults.map(({ path, words }) => `--${path}: ${words}`),
    );
  }
}

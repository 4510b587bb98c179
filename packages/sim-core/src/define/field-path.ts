// Places of fields in a design, as types: editors complete them, and a misspelt one is refused before anything runs.
import type { SystemInput } from './system-input.ts';

type Leaf = string | number | boolean | null | undefined | readonly unknown[] | Float64Array;

type PathOf<T> = T extends Leaf
  ? never
  : {
      [Key in keyof T & string]-?: NonNullable<T[Key]> extends Leaf
        ? Key
        : Key | `${Key}.${PathOf<NonNullable<T[Key]>>}`;
    }[keyof T & string];

/** Place of a field in a design, such as `'array.tilt'`. */
export type DesignField = PathOf<SystemInput>;

/** Place of an entry of a list, or of a field in one, such as `'control.outages.0.from'`. */
type InList = `${DesignField}.${number}${string}`;

/**
 * Record whose keys must be places of fields; other names are taken only with values of the kind `Free`. Keys that are no literals (read from a file)
 * are checked when it runs.
 */
export type ByField<Given, Free = never> = {
  readonly [Key in keyof Given]: string extends Key ? unknown : Key extends DesignField | InList ? unknown : Free;
};

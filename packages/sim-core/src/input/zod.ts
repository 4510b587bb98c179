// The few schemas and methods of zod that checks of input use, on the core that zod offers for such layers: without making JSON Schema,
// compiled checks and locales, which a page would load for nothing. Types are zod's; at run time there are the methods below and no more.
import type * as zod from 'zod';
import * as core from 'zod/v4/core';

export type { core, input, output, ZodType } from 'zod';
export const NEVER: typeof zod.NEVER = core.NEVER;
export const registry: typeof zod.registry = core.registry;

type Any = core.$ZodType;
type Checked = Any & { check(check: unknown): Any };
type Payload = core.ParsePayload & { addIssue?: (issue: core.$ZodRawIssue) => void };

/** What every schema can; as zod's own do it. */
const METHODS = {
  check(this: Any, check: core.$ZodCheck) {
    const definition = this._zod.def;
    const checks = [...(definition.checks ?? []), check];
    return core.clone(this, core.util.mergeDefs(definition, { checks }) as never, { parent: true });
  },
  clone(this: Any, definition: never, parameters: never) {
    return core.clone(this, definition, parameters);
  },
  safeParse(this: Any, data: unknown) {
    return core.safeParse(this, data);
  },
  superRefine(this: Checked, refinement: never) {
    return this.check(core._superRefine(refinement));
  },
  transform(this: Any, change: (value: unknown, payload: Payload) => unknown) {
    const transform = (value: unknown, payload: Payload) => {
      payload.addIssue = (issue) => {
        payload.issues.push(core.util.issue({ inst: out, ...issue }));
      };
      return change(value, payload);
    };
    const out: Any = new Transform({ type: 'transform', transform } as never);
    return new Pipe({ type: 'pipe', in: this, out } as never);
  },
  optional(this: Any) {
    return new ZodOptional({ type: 'optional', innerType: this } as never);
  },
  nullable(this: Any) {
    return new ZodNullable({ type: 'nullable', innerType: this } as never);
  },
  default(this: Any, value: unknown) {
    return new ZodDefault(withValue('default', this, value));
  },
  prefault(this: Any, value: unknown) {
    return new ZodPrefault(withValue('prefault', this, value));
  },
};

/** A list's bounds besides. */
const LIST = {
  min(this: Checked, least: number) {
    return this.check(core._minLength(least));
  },
  max(this: Checked, most: number) {
    return this.check(core._maxLength(most));
  },
};

/** What a default is copied of each time, so that no design shares it. */
const withValue = (type: string, innerType: Any, value: unknown): never =>
  ({
    type,
    innerType,
    get defaultValue() {
      return core.util.shallowClone(value);
    },
  }) as never;

/** What schemas are made of, where it is asked for. */
const PARTS = {
  get element() {
    return definitionOf(this).element;
  },
  get shape() {
    return definitionOf(this).shape;
  },
  unwrap() {
    return definitionOf(this).innerType;
  },
};

const definitionOf = (schema: unknown): { element?: Any; shape?: object; innerType?: Any } =>
  (schema as Any)._zod.def as object;

/** A kind of schema: what zod's core makes of it, with the methods. */
function kind(name: string, base: { init(schema: never, definition: never): void }, more: object = {}) {
  const members = { ...METHODS, ...more };
  Object.defineProperties(members, Object.getOwnPropertyDescriptors(PARTS));
  const make = core.$constructor as unknown as (name: string, init: typeof base.init, members: object) => unknown;
  return make(name, (schema, definition) => base.init(schema, definition), members) as new (
    definition: object,
  ) => Any;
}

const of = <T>(made: unknown): T => made as T;
const Custom = kind('ZodCustom', core.$ZodCustom);
const Null = kind('ZodNull', core.$ZodNull);
const Pipe = kind('ZodPipe', core.$ZodPipe);
const Transform = kind('ZodTransform', core.$ZodTransform);
const Union = kind('ZodUnion', core.$ZodUnion);
const Never = kind('ZodNever', core.$ZodNever);
export const ZodArray = of<typeof zod.ZodArray>(kind('ZodArray', core.$ZodArray, LIST));
export const ZodDefault = of<typeof zod.ZodDefault>(kind('ZodDefault', core.$ZodDefault));
export const ZodNullable = of<typeof zod.ZodNullable>(kind('ZodNullable', core.$ZodNullable));
export const ZodObject = of<typeof zod.ZodObject>(kind('ZodObject', core.$ZodObject));
export const ZodOptional = of<typeof zod.ZodOptional>(kind('ZodOptional', core.$ZodOptional));
export const ZodPrefault = of<typeof zod.ZodPrefault>(kind('ZodPrefault', core.$ZodPrefault));

export const array: typeof zod.array = of((element: Any) => core._array(ZodArray as never, element));
export const custom: typeof zod.custom = of((check: never) => core._custom(Custom as never, check, undefined));
export const union: typeof zod.union = of((options: readonly Any[]) => new Union({ type: 'union', options }));
export const strictObject: typeof zod.strictObject = of(
  (shape: object) => new ZodObject({ type: 'object', shape, catchall: new Never({ type: 'never' }) } as never),
);
const makeNull: typeof zod.null = of(() => new Null({ type: 'null' }));

export { makeNull as null };

import type { DesignAssumption, LoopLayout, SystemDesign } from '../design/design.ts';
import { checkInput, member } from '../input/check.ts';
import { DesignError, quote } from '../input/errors.ts';
import { provenance } from '../input/field.ts';
import * as z from '../input/zod.ts';
import { moduleParameters } from '../physics/pv/datasheet.ts';
import { derivedDefaults } from './derived.ts';
import { isUsed } from './derived-pump.ts';
import { keptAssumptions, PLATE, RATED_POINT, readSaved } from './saved.ts';
import { systemSchema } from './schema/system.ts';
import type { SystemInput } from './system-input.ts';

/**
 * Checks a design, turns its quantities into SI and writes out every default.
 *
 * @param input - The design; see {@link SystemInput}. A bare number is in the unit that {@link SystemDesign} documents. A design
 *   that came from here, or its copy by way of JSON, is read again as it stands.
 * @returns The frozen design, with the list of every default used and where it comes from.
 * @throws {@link DesignError} listing all faults at once, by path, with the unit expected.
 * @example
 * const design = defineSystem({
 *   name: 'two panels',
 *   array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '21 ft2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
 *   tank: { volume: '80 gal' },
 *   draw: { dailyVolume: '200 L' },
 * });
 */
export function defineSystem(input: SystemInput | SystemDesign): SystemDesign {
  const saved = readSaved(input);
  const written = saved?.input ?? input;
  if (saved === null) refuseTwice(written);
  const checked = checkInput(systemSchema, written);
  const filled: DesignAssumption[] = [];
  collectDefaults(systemSchema, written, checked, '', filled);
  const design = derivedDefaults(checked, filled);
  const assumptions = saved === null ? filled : keptAssumptions(saved.assumptions, filled, design);
  moduleParameters(design.pv.module); // refuses a data sheet that no module can have
  const { control, pump } = design;
  const hasPlate = design.loop.exchanger === 'plate';
  return deepFreeze({
    ...design,
    assumptions: assumptions.filter(
      ({ path }) =>
        isUsed(path, design.pv, pump, control) &&
        (hasPlate || !path.startsWith('loop.plate')) &&
        ofLayout(path, design.loop.layout) &&
        (path !== 'tank.second.divertAt' || design.tank.second?.charging === 'in-turn'),
    ),
  });
}

/** Whether a default has a say in the loop's layout. */
function ofLayout(path: string, layout: LoopLayout): boolean {
  if (path.startsWith('loop.drainBack')) return layout === 'drain-back';
  if (path === 'loop.drainBelow') return layout === 'direct';
  if (layout === 'direct' && /^loop\.(plate|exchanger)/.test(path)) return path === 'loop.plate.returnHeight';
  return layout === 'closed' || !/^loop\.(vessel|relief|steamPower|fillPressure|minimumPressure|pressure)/.test(path);
}

/** Fields that follow where measured points are given. */
const BY_POINTS = [
  ['pump', 'curves', RATED_POINT],
  ['pv.module', 'ivPoints', PLATE],
] as const;

/** Refuses measured points beside the numbers that follow from them. */
function refuseTwice(written: unknown): void {
  const issues = BY_POINTS.flatMap(([path, points, fields]) => {
    const part = path.split('.').reduce(member, written);
    if (!Array.isArray(member(part, points))) return [];
    return fields
      .filter((field) => member(part, field) !== undefined)
      .map((field) => ({
        path: `${path}.${field}`,
        found: `${quote(member(part, field))} beside ${path}.${points}`,
        expected: 'one of the two',
        remedy: `Leave it out: it follows from ${points}.`,
      }));
  });
  if (issues.length > 0) throw new DesignError(issues);
}

/** Lists the defaults that the schema filled in: fields with a source whose value the input does not give. */
function collectDefaults(
  schema: z.ZodType,
  input: unknown,
  output: unknown,
  path: string,
  list: DesignAssumption[],
): void {
  const known = provenance.get(schema);
  if (known !== undefined && input === undefined) {
    list.push({ path, value: plainValue(output), unit: known.unit, source: known.source });
    return;
  }
  const inner = bare(schema);
  if (inner instanceof z.ZodArray && Array.isArray(output)) {
    output.forEach((item, at) => {
      collectDefaults(inner.element as z.ZodType, member(input, String(at)), item, `${path}.${at}`, list);
    });
  }
  if (!(inner instanceof z.ZodObject) || output === null || output === undefined) return;
  for (const [key, field] of Object.entries(inner.shape)) {
    const below = path === '' ? key : `${path}.${key}`;
    collectDefaults(field as z.ZodType, member(input, key), member(output, key), below, list);
  }
}

/** What a field takes, without what makes it optional. */
function bare(schema: z.ZodType): z.ZodType {
  const mayLack =
    schema instanceof z.ZodDefault ||
    schema instanceof z.ZodPrefault ||
    schema instanceof z.ZodOptional ||
    schema instanceof z.ZodNullable;
  return mayLack ? bare(schema.unwrap() as z.ZodType) : schema;
}

/** Structured defaults are shown as text. */
function plainValue(value: unknown): DesignAssumption['value'] {
  const isList = Array.isArray(value) && value.every((item) => typeof item === 'number');
  const isStructure = typeof value === 'object' && value !== null && !isList;
  return isStructure ? JSON.stringify(value) : (value as DesignAssumption['value']);
}

/** Freezes a plain structure through and through. */
function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}

import { DesignError, type DesignIssue, quote } from './errors.ts';
import type * as z from './zod.ts';

/**
 * Checks what a caller wrote against a schema and turns it into SI.
 *
 * @param schema - Built of the helpers in `field.ts`.
 * @param input - As the caller wrote it.
 * @throws {@link DesignError} listing all faults at once, by path, with the unit expected.
 */
export function checkInput<S extends z.ZodType>(schema: S, input: unknown): z.output<S> {
  const outcome = schema.safeParse(input);
  if (outcome.success) return outcome.data;
  throw new DesignError(toDesignIssues(outcome.error.issues, input));
}

/** A member of a value that may be anything. */
export const member = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;

const OBJECT = { expected: 'an object with the documented fields', remedy: 'Give its fields, each with a value.' };

/** Turns a validator's findings into our terms, so that the message does not depend on the library. */
function toDesignIssues(issues: readonly z.core.$ZodIssue[], input: unknown): DesignIssue[] {
  return issues.flatMap((issue): DesignIssue[] => {
    const path = issue.path.map(String).join('.');
    const found = quote(issue.path.reduce<unknown>((value, key) => member(value, String(key)), input));
    switch (issue.code) {
      case 'custom': {
        const params = issue.params as Omit<DesignIssue, 'path'>;
        return [{ path, found: params.found, expected: params.expected, remedy: params.remedy }];
      }
      case 'unrecognized_keys':
        return issue.keys.map((key) => ({
          path: path === '' ? key.slice(0, 40) : `${path}.${key.slice(0, 40)}`,
          found: 'a field of this name',
          expected: 'one of the documented fields',
          remedy: 'Check the spelling, or remove it.',
        }));
      case 'invalid_union':
        return [
          {
            path,
            found,
            expected:
              '{ b0 }, { angles, values }, { covers, refractiveIndex, extinction, thickness } or { transversal, longitudinal, tubes }',
            remedy: 'Give one of the forms.',
          },
        ];
      case 'invalid_type':
        if (issue.expected === 'array') {
          return [{ path, found, expected: 'a list of the documented objects', remedy: 'Give a list.' }];
        }
        return [{ path, found, ...OBJECT }];
      default:
        return [{ path, found, ...OBJECT }];
    }
  });
}

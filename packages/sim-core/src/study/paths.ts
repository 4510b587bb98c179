/** Fields of a design by their place, such as `array.collector.area`. */
import type { SystemInput } from '../define/system-input.ts';
import { member } from '../input/check.ts';
import type { StudyValue } from './types.ts';

const PATH = /^[A-Za-z]\w*(\.\w+)*$/;

/** Whether a text is written like a place in a design. */
export const isPath = (text: string): boolean => text.length <= 120 && PATH.test(text);

/** A copy of a design with some fields set; what is not there on the way is made. The design itself stays as it is. */
export function setFields(design: SystemInput, fields: Readonly<Record<string, StudyValue>>): SystemInput {
  let changed: unknown = design;
  for (const [path, value] of Object.entries(fields)) changed = setField(changed, path.split('.'), value);
  return changed as SystemInput;
}

function setField(holder: unknown, [key, ...rest]: readonly string[], value: StudyValue): unknown {
  const inner = rest.length === 0 ? value : setField(member(holder, key!), rest, value);
  if (Array.isArray(holder)) return holder.map((item, index) => (String(index) === key ? inner : item));
  const isObject = typeof holder === 'object' && holder !== null;
  return { ...(isObject ? holder : {}), [key!]: inner };
}

/** The value at a place; `undefined` where there is none. */
export const fieldAt = (design: object, path: string): unknown =>
  path.split('.').reduce<unknown>((holder, key) => member(holder, key), design);

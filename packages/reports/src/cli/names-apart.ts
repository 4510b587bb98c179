// Designs of one comparison that bear the same name, told apart by the fields in which they differ.
import type { SystemDesign } from '@noonloop/sim-core';
import { designChanges } from '../design-changes.ts';
import { designUnit } from '../design-units.ts';
import { formatDesignValue } from '../quantities.ts';
import type { Units } from '../units.ts';

/** How many fields a name takes. */
const NAMED_FIELDS = 2;

/** `my house, array.panels 3` where several are called `my house`; names of one design alone, and of equal designs, stay. */
export function namesApart(designs: readonly SystemDesign[], units: Units): SystemDesign[] {
  return designs.map((design) => {
    const fields = new Map<string, string>();
    for (const other of designs.filter(({ name }) => name === design.name))
      for (const { path, from } of designChanges(design, other))
        fields.set(path, `${path} ${formatDesignValue(from, designUnit(path), path, units)}`);
    if (fields.size === 0) return design;
    const more = fields.size - NAMED_FIELDS;
    const said = [...fields.values()].slice(0, NAMED_FIELDS).join(', ');
    return { ...design, name: `${design.name}, ${said}${more > 0 ? ` and ${more} more` : ''}` };
  });
}

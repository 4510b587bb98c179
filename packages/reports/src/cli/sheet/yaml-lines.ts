// Lines to copy into a design.
import { stringify } from 'yaml';

/** Plain data as YAML, every number as it is. */
export const yamlLines = (value: unknown): string => stringify(value, { lineWidth: 0 });

/** A collector with four digits, more than any survey knows. */
export const collectorLines = (collector: object): string =>
  yamlLines({
    collector: JSON.parse(
      JSON.stringify(collector, (_, value: unknown) =>
        typeof value === 'number' ? Number(value.toPrecision(4)) : value,
      ),
    ) as unknown,
  });

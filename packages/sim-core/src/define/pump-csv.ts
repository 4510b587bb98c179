/** A pump's measured points out of a small table. */
import type { PumpCurveDesign, PumpPointDesign } from '../design/pump.ts';
import { DesignError, quote } from '../input/errors.ts';

/** Columns, in this order. */
const COLUMNS = ['voltage_V', 'flow_L_per_min', 'head_m', 'power_W'];
const HEADER = COLUMNS.join(',');
/** Longest table that is read; a pump test has dozens of rows. [characters] */
const LONGEST = 100_000;
const LITRE_PER_MINUTE = 1 / 60_000;

/**
 * Reads `pump.curves` of a design from a comma-separated table with the columns voltage_V, flow_L_per_min, head_m and power_W, one row for each point;
 * rows of one voltage belong together, in any order. Lines that start with # are left out.
 *
 * @param text - The table.
 * @returns Curves by rising voltage, points by rising flow; `defineSystem` checks them.
 * @throws {@link DesignError} naming every line that is no such row.
 */
export function pumpCurvesFromCsv(text: string): PumpCurveDesign[] {
  if (typeof text !== 'string' || text.length > LONGEST)
    throw refusal('', text, `a table of at most ${LONGEST} characters`);
  const lines = text.split(/\r?\n/).map((line, at) => ({ cells: line.trim(), number: at + 1 }));
  const [header, ...rows] = lines.filter(({ cells }) => cells !== '' && !cells.startsWith('#'));
  if (header?.cells.replaceAll(' ', '') !== HEADER)
    throw refusal(`line ${header?.number ?? 1}`, header?.cells, `the header ${HEADER}`);
  const curves = new Map<number, PumpPointDesign[]>();
  const issues = rows.flatMap(({ cells, number }) => {
    const values = cells.split(',').map((cell) => (cell.trim() === '' ? Number.NaN : Number(cell)));
    if (values.length !== COLUMNS.length || !values.every(Number.isFinite))
      return refusal(`line ${number}`, cells, `four numbers: ${HEADER}`).issues;
    const [voltage, flow, head, power] = values as [number, number, number, number];
    curves.set(voltage, [...(curves.get(voltage) ?? []), { flow: flow * LITRE_PER_MINUTE, head, power }]);
    return [];
  });
  if (issues.length > 0) throw new DesignError(issues);
  return [...curves]
    .toSorted(([first], [second]) => first - second)
    .map(([voltage, points]) => ({ voltage, points: points.toSorted((one, other) => one.flow - other.flow) }));
}

const refusal = (path: string, found: unknown, expected: string): DesignError =>
  new DesignError([{ path, found: quote(found), expected, remedy: 'Mend the line, or leave it out.' }]);

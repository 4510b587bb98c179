// The comment lines of our own layout.
import type { PlainLayout } from '../options.ts';
import { type FormatInput, SiteReader } from './format.ts';
import { LAYOUT_COLUMNS, LAYOUT_KEYS, LAYOUT_TIME } from './plain-layout.ts';

/** Layout that the comment lines of a file describe; notes and assumptions in them are handed on. */
export function ownLayout(comments: readonly string[], { faults, notes }: FormatInput): PlainLayout {
  const values = new Map<string, { value: string; line: number }>();
  comments.forEach((comment, index) => {
    const parts = /^#\s*([\w]+)\s*:\s*(.*)$/.exec(comment);
    if (parts === null) return;
    const [, key, value] = parts as unknown as [string, string, string];
    if (key === LAYOUT_KEYS.note) notes.push({ code: 'note', text: value.trim() });
    else if (key === LAYOUT_KEYS.assumption) notes.push(assumption(value));
    else if (!values.has(key)) values.set(key, { value: value.trim(), line: index + 1 });
  });
  const read = new SiteReader(faults);
  const at = (key: string): [string | undefined, number | null] => [
    values.get(key)?.value,
    values.get(key)?.line ?? 1, // a line that is not there: where the header begins
  ];
  const [midpoint, midpointLine] = at(LAYOUT_KEYS.irradianceMidpoint);
  return {
    site: {
      name: values.get(LAYOUT_KEYS.name)?.value ?? '',
      latitude: read.latitude(...at(LAYOUT_KEYS.latitude)),
      longitude: read.longitude(...at(LAYOUT_KEYS.longitude)),
      elevation: read.elevation(...at(LAYOUT_KEYS.elevation)),
      utcOffset: read.utcOffset(...at(LAYOUT_KEYS.utcOffset)),
      ...(values.has(LAYOUT_KEYS.windHeight) ? { windHeight: read.windHeight(...at(LAYOUT_KEYS.windHeight)) } : {}),
    },
    columns: LAYOUT_COLUMNS,
    time: LAYOUT_TIME,
    stamps: 'start',
    irradianceMidpoint: read.number(midpoint, midpointLine, LAYOUT_KEYS.irradianceMidpoint, [0, 1], 'h'),
  };
}

function assumption(line: string): { code: string; text: string } {
  const [code, ...text] = line.split('|');
  return text.length === 0 ? { code: 'note', text: line.trim() } : { code: code!.trim(), text: text.join('|').trim() };
}

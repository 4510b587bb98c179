// Bytes to text, and what is no text.
import type { Faults } from './errors.ts';
import type { WeatherAssumption } from './year.ts';

/**
 * Text of a file: UTF-8 with or without mark; UTF-16 with its mark, which is said; or, where neither fits, Windows-1252, which
 * is said.
 */
export function decodeText(bytes: Uint8Array, faults: Faults, notes: WeatherAssumption[]): string {
  const wide = wideEncoding(bytes);
  if (wide !== null) return decodeWide(bytes, wide, faults, notes);
  if (bytes.includes(0)) failBinary(faults);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const text = 'The text is not UTF-8 and was read as Windows-1252; names may show wrong letters.';
    notes.push({ code: 'encoding-windows-1252', text });
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** UTF-16 by its byte order mark; spreadsheets save "Unicode text" so. */
function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  return bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : null;
}

function decodeWide(
  bytes: Uint8Array,
  encoding: 'utf-16le' | 'utf-16be',
  faults: Faults,
  notes: WeatherAssumption[],
): string {
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes);
    notes.push({ code: 'encoding-utf-16', text: 'The text is UTF-16 by its byte order mark and was read so.' });
    return text;
  } catch {
    return faults.fail({
      code: 'encoding',
      expected: 'whole UTF-16, which its byte order mark announces',
      remedy: 'Save the file as "CSV UTF-8".',
    });
  }
}

/** Whether a text has control characters that no text file has, among its first characters. */
function hasControl(text: string): boolean {
  for (let at = 0; at < text.length && at < 65_536; at++) {
    const code = text.charCodeAt(at);
    if (code < 9 || (code > 13 && code < 32)) return true;
  }
  return text.includes('\0');
}

/** Text without byte order mark and with `\n` at the line ends; a fault when it is empty or no text. */
export function cleanText(text: string, faults: Faults): string {
  const bare = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (hasControl(bare)) failBinary(faults);
  if (bare.trim() === '') {
    faults.fail({ code: 'empty', expected: 'a file with text, not an empty one', remedy: 'Download the file again.' });
  }
  return bare.includes('\r') ? bare.replace(/\r\n?/g, '\n') : bare;
}

function failBinary(faults: Faults): never {
  return faults.fail({
    code: 'binary',
    expected: 'text, not binary data',
    remedy: 'Unpack an archive first; export a spreadsheet as CSV.',
  });
}

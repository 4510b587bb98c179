// What V8 made of a script, kept for the next call in a folder of the user's own. Whatever is wrong with it, the command goes without.
import { lstatSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';

/** Sum of the script, sum of what was kept of it. [B] */
const HEAD = 8;

const isKept = process.env.NODE_DISABLE_COMPILE_CACHE === undefined;
const user = process.getuid?.();
const folder = join(tmpdir(), `noonloop-${user ?? 'kept'}`);
const placeOf = (kind) => join(folder, `${kind}-${process.version}-${process.arch}`);

/** Nobody else may lay anything there, for it is run. */
function isOurs() {
  const there = lstatSync(folder);
  return there.isDirectory() && (user === undefined || (there.uid === user && (there.mode & 0o022) === 0));
}

/** @returns What was kept of just this script, `undefined` where there is none. */
export function readKept(kind, source) {
  if (!isKept) return undefined;
  try {
    if (!isOurs()) return undefined;
    const bytes = readFileSync(placeOf(kind));
    const data = bytes.subarray(HEAD);
    return bytes.readUInt32LE(0) === crc32(source) && bytes.readUInt32LE(4) === crc32(data) ? data : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps it whole or not at all. */
export function writeKept(kind, source, make) {
  if (!isKept) return;
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (!isOurs()) return;
    const data = make();
    const head = Buffer.alloc(HEAD);
    head.writeUInt32LE(crc32(source), 0);
    head.writeUInt32LE(crc32(data), 4);
    const part = `${placeOf(kind)}.${process.pid}`;
    writeFileSync(part, Buffer.concat([head, data]), { flag: 'wx' });
    renameSync(part, placeOf(kind));
  } catch {
    // A folder that cannot be written makes the command slower and nothing else.
  }
}

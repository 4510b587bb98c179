// Run in a process of its own by bundles.mjs: loads modules and prints what changed by that, or "none".
import { pathToFileURL } from 'node:url';

/** zod's own, by which two copies of it in one program share their settings; nothing of ours. */
const KNOWN = ['__zod_globalConfig', '__zod_globalRegistry'];

const prototypes = [Object, Array, Function, String, Number, Promise, Map, Set, Date, RegExp, Float64Array];

const look = () => ({
  globals: Reflect.ownKeys(globalThis).map(String),
  prototypes: prototypes.flatMap((type) =>
    Reflect.ownKeys(type.prototype).map((key) => `${type.name}.prototype.${String(key)}`),
  ),
  listeners: process.eventNames().map((name) => `${String(name)} ${process.listenerCount(name)}`),
  environment: Object.keys(process.env),
});

// Touched once, so that what Node itself makes on first use is there before.
await import('node:module');
const before = look();
let words = '';
const write = process.stdout.write.bind(process.stdout);
process.stdout.write = (text) => {
  words += text;
  return true;
};
for (const file of JSON.parse(process.env.MODULES)) await import(pathToFileURL(file).href);
process.stdout.write = write;
const after = look();
const traces = Object.keys(before).flatMap((kind) =>
  after[kind].filter((item) => !before[kind].includes(item) && !KNOWN.includes(item)),
);
if (words !== '') traces.push('words on standard output');
write(traces.length === 0 ? 'none' : traces.join(', '));

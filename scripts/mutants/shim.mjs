// What tests ask of vitest, gathered instead of run: the judge of mutants runs those that it wants.
import { JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';
import * as chai from 'chai';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
export const expect = Object.assign(chai.expect, { assertions() {}, hasAssertions() {} });

/** Tests that were found: `name` and `run`; whoever has them empties the list. */
export const gathered = [];
const hooks = () => ({ first: [], each: [], ready: null });
let path = [{ name: '', ...hooks() }];
const asRow = (row) => (Array.isArray(row) ? row : [row]);
const bodyOf = (rest) => rest.find((part) => typeof part === 'function');
const skip = () => {};

async function once(group) {
  for (const hook of group.first) await hook();
}
function add(name, ...rest) {
  const [groups, body] = [path, bodyOf(rest)];
  const run = async () => {
    for (const group of groups) {
      group.ready ??= once(group);
      await group.ready;
    }
    for (const { each } of groups) for (const hook of each) await hook();
    await body();
  };
  gathered.push({ name: [...groups.slice(1).map((group) => group.name), name].join(' > '), run });
}
/** Groups that wait for something before they name their tests: one after the other, once the file is read. */
const waiting = [];
function group(name, ...rest) {
  const [before, body] = [path, bodyOf(rest)];
  const inside = [...path, { name, ...hooks() }];
  if (body.constructor.name === 'AsyncFunction') {
    waiting.push({ inside, body });
    return;
  }
  path = inside;
  body();
  path = before;
}
/** Waits until all groups of a file have named their tests. */
export async function named() {
  while (waiting.length > 0) {
    const { inside, body } = waiting.shift();
    path = inside;
    await body();
  }
}
const eachOf =
  (one) =>
  (rows, ...values) =>
  (name, ...rest) => {
    const body = bodyOf(rest);
    for (const [at, row] of (rows.raw === undefined ? rows : columnsOf(rows, values)).entries())
      one(`${name} #${at}`, () => body(...asRow(row)));
  };
/** Rows of a table in a template. */
function columnsOf([heads], values) {
  const names = heads.split('|').map((name) => name.trim());
  return Array.from({ length: values.length / names.length }, (_, row) =>
    Object.fromEntries(names.map((name, at) => [name, values[row * names.length + at]])),
  );
}
const none = Object.assign(() => {}, { each: () => skip, skipIf: () => none });
export const it = Object.assign(add, { each: eachOf(add), skipIf: (no) => (no ? none : it), skip });
export const describe = Object.assign(group, { each: eachOf(group), skipIf: (no) => (no ? none : describe), skip });

/** A file's tests stand outside all groups and hooks of the one before it. */
export function begin() {
  path = [{ name: '', ...hooks() }];
  gathered.length = 0;
}
export const beforeAll = (hook) => void path.at(-1).first.push(hook);
export const beforeEach = (hook) => void path.at(-1).each.push(hook);
export const afterEach = skip;
const last = [];
export const afterAll = (hook) => void last.push(hook);
/** Removes what tests have left behind. */
export async function tidy() {
  for (const hook of last.splice(0)) await hook();
}

// What tests ask of vitest, gathered instead of run: the mutants' judge runs them again and again in one process.
import { JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';
import * as chai from 'chai';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
export const expect = chai.expect;

/** Tests that were found: `name` and `run`. */
export const gathered = [];
const groups = [];
const asRow = (row) => (Array.isArray(row) ? row : [row]);
const skip = () => {};

const add = (name, body) => gathered.push({ name: [...groups, name].join(' > '), run: () => body() });
const group = (name, body) => {
  groups.push(name);
  body();
  groups.pop();
};
const eachOf = (one) => (rows) => (name, body) => {
  for (const [at, row] of rows.entries()) one(`${name} #${at}`, () => body(...asRow(row)));
};
const none = Object.assign(() => {}, { each: () => skip });
export const it = Object.assign(add, { each: eachOf(add), skipIf: (no) => (no ? none : it), skip });
export const describe = Object.assign(group, {
  each: eachOf(group),
  skipIf: (no) => (no ? none : describe),
});
const never = () => {
  throw new Error('hooks are not run under mutants');
};

export { never as afterAll, never as afterEach, never as beforeAll, never as beforeEach };

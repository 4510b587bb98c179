import { describe, it } from 'vitest';
import { NSRDB_MINUTES, ofInstants } from './instants.ts';

describe('air in step with light, by hand [NSRDB: docs/theory/weather.md]', () => {
  it.each(NSRDB_MINUTES)('NSRDB at minutes %j: each instant stands for the time about it', ofInstants);
});

// What most words need of the core and no more: a bundle of the command loads this in place of the whole library.
export { defineSystem, simulate } from '@noonloop/sim-core';

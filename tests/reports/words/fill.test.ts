import { expect, it } from 'vitest';
import { factWords, fill } from '../../../packages/reports/src/words/fill.ts';

it.each([
  [{ value: 50, unit: '°C' }, '50 °C', '122 °F'],
  [{ value: 4, unit: 'K' }, '4 K', '7.2 °F'],
  [{ value: 58, unit: 'K' }, '58 K', '104 °F'],
  [{ value: 149_000, unit: 'Pa' }, '1.5 bar', '22 psi'],
  [{ value: 30_000, unit: 'Pa' }, '0.3 bar', '4.4 psi'],
  [{ value: 0.0126, unit: 'm³' }, '13 L', '3.3 gal'],
  [{ value: 73, unit: 'm³' }, '73 m³', '19,285 gal'],
  [{ value: 1234.4, unit: 'h' }, '1,234 h', '1,234 h'],
  [{ value: 0.125, unit: '-' }, '13 %', '13 %'],
  [{ value: 2.8, unit: 'mol/m³' }, '2.8 mmol/L', '280 mg/L as CaCO3'],
  [{ value: 0.0005, unit: 'm' }, '0.5 mm', '0.01969 in'],
  [{ value: 5.5, unit: 'years' }, '5.5 years', '5.5 years'],
  [{ value: 1, unit: 'months' }, '1 month', '1 month'],
])('%j reads %s, in US units %s [NIST SP 811 factors; digits: requirement]', (fact, metric, us) => {
  expect([factWords(fact, 'metric'), factWords(fact, 'us')]).toEqual([metric, us]);
});

it('a sentence takes its facts by name and says which one lacks [requirement]', () => {
  const facts = { fill: { value: 2e5, unit: 'Pa' }, gauge: 'loopPressure' };
  expect(fill('{gauge} at {fill}', facts, 'us', { loopPressure: 'pressure gauge' })).toBe('pressure gauge at 29 psi');
  expect(() => fill('{nothing}', facts, 'us')).toThrow(/nothing/);
});

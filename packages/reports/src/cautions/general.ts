/** Cautions that hold for every system, each with the number of this one that it is about. */
import { arrayArea, COEFFICIENTS_SHORT, dryTemperature } from '@noonloop/sim-core/formulas';
import { celsius, extreme, type Found, kelvin, moment, type Rule } from './types.ts';

/** Flat panels with liquid and fixings. [kg/m²] Judgement from makers' papers, from memory; the panel's own paper decides. */
const PANEL_MASS = [15, 30] as const;
/** From here water boils at the pressure of the air. [°C] */
const STEAM = 100;

/** Weight on the roof. @internal */
export const roof: Rule = ({ result: { design } }): Found => {
  const area = arrayArea(design.array);
  const [lightest, heaviest] = PANEL_MASS;
  return {
    code: 'roof',
    severity: 'note',
    facts: {
      least: { value: area * lightest, unit: 'kg' },
      most: { value: area * heaviest, unit: 'kg' },
      area: { value: area, unit: 'm²' },
      lightest: { value: lightest, unit: 'kg/m²' },
      heaviest: { value: heaviest, unit: 'kg/m²' },
    },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Gas and mains electricity. @internal */
export const trades: Rule = ({ result: { design } }): Found => {
  const { carrier, burnerPower } = design.heater;
  return {
    code: 'trades',
    severity: 'note',
    facts: { power: { value: burnerPower, unit: carrier === 'electricity' ? 'W electric' : 'W' } },
    finding: [
      carrier === 'electricity' ? 'electric' : 'burner',
      ...(design.pump.drive === 'mains' ? (['pump'] as const) : []),
    ],
    advice: ['act'],
  };
};

/** Flue and carbon monoxide of a burner. @internal */
export const flue: Rule = ({ result: { design } }) =>
  design.heater.carrier === 'electricity' || design.heater.carrier === 'heat'
    ? null
    : { code: 'flue', severity: 'note', facts: {}, finding: [], advice: ['act'] };

/** Dry or standing collectors. @internal */
export const steam: Rule = ({ result: { design }, columns }): Found => {
  const { collector, groups } = design.array;
  const [{ stated, temperature }] = [collector, ...groups.map((group) => group.collector)]
    .map((one) => ({ stated: one.stagnationTemperature, temperature: dryTemperature(one) }))
    .toSorted((one, other) => other.temperature - one.temperature) as [{ stated?: number; temperature: number }];
  const hour = extreme(columns.absorberTemperature, 1);
  const hottest = columns.absorberTemperature[hour]!;
  return {
    code: 'steam',
    severity: 'note',
    facts: {
      peak: celsius(hottest),
      when: moment(hour),
      dry: celsius(temperature),
      short: kelvin(COEFFICIENTS_SHORT),
    },
    finding: hottest > STEAM ? ['found'] : [],
    advice: [stated === undefined ? 'reckoned' : 'stated', 'act'],
  };
};

/** Metal on the roof. @internal */
export const bonding: Rule = (): Found => ({
  code: 'bonding',
  severity: 'note',
  facts: {},
  finding: [],
  advice: ['act'],
});

/** Mains water and loop fluid. @internal */
export const backflow: Rule = ({ result: { design } }): Found => ({
  code: 'backflow',
  severity: design.loop.makeUp ? 'warning' : 'note',
  facts: {},
  finding: design.loop.makeUp ? ['found'] : [],
  advice: ['act'],
});

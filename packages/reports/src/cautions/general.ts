/** Cautions that hold for every system, each with the number of this one that it is about. */
import { formatHour } from '../calendar.ts';
import { displayUnit, formatNumber } from '../units.ts';
import { extreme, type Rule, temperatureNumber } from './types.ts';

/** Flat panels with liquid and fixings. [kg/m²] Judgement from makers' papers, from memory; the panel's own paper decides. */
const PANEL_MASS = [15, 30] as const;
/** From here water boils at the pressure of the air. [°C] */
const STEAM = 100;

const FOOT = 0.3048; // [m]

/** Weight on the roof. @internal */
export const roof: Rule = ({ result: { design }, units, show }) => {
  const { panels, collector } = design.array;
  const area = panels * collector.area;
  const [least, most] = [area * PANEL_MASS[0], area * PANEL_MASS[1]];
  const { symbol, scale } = displayUnit('mass', units);
  const square = units === 'us' ? FOOT * FOOT : 1;
  const band = PANEL_MASS.map((mass) => formatNumber(mass * scale * square, units === 'us' ? 1 : 0)).join(' to ');
  return {
    code: 'roof',
    severity: 'note',
    numbers: [
      { label: 'Least weight', value: least, kind: 'mass' },
      { label: 'Most weight', value: most, kind: 'mass' },
      { label: 'Area of the panels', value: area, kind: 'area' },
    ],
    source: `${band} ${symbol}/${units === 'us' ? 'ft²' : 'm²'} with liquid and fixings: judgement, from memory of makers' papers`,
    finding: `${show(area, 'area')} of panels weigh some ${show(least, 'mass')} to ${show(most, 'mass')} with liquid and fixings; snow and wind come on top.`,
    advice:
      'Wind can lift panels with more force than their weight: have structure and fixings checked by someone qualified, by the weight in the panel’s own papers, and work on roofs only with fall protection. Follow the local code.',
  };
};

/** Gas and mains electricity. @internal */
export const trades: Rule = ({ result: { design }, show }) => {
  const { carrier, burnerPower } = design.heater;
  const electric = carrier === 'electricity';
  const kind = electric ? 'electricPower' : 'power';
  const others = design.pump.drive === 'mains' ? ' The pump runs on the mains.' : '';
  return {
    code: 'trades',
    severity: 'note',
    numbers: [{ label: electric ? 'Power of the heater' : 'Heat of the burner', value: burnerPower, kind }],
    source: 'Common practice, no source',
    finding: electric
      ? `The backup heater draws up to ${show(burnerPower, kind)} from the mains.${others}`
      : `The backup heater burns gas or oil for up to ${show(burnerPower, kind)} of heat.${others}`,
    advice:
      'Gas, mains electricity and pressure vessels are work for licensed people. PV modules are live whenever there is light. Follow the local code.',
  };
};

/** Dry or standing collectors. @internal */
export const steam: Rule = ({ columns, degrees }) => {
  const hour = extreme(columns.absorberTemperature, 1);
  const hottest = columns.absorberTemperature[hour]!;
  return {
    code: 'steam',
    severity: 'note',
    numbers: hottest > STEAM ? [temperatureNumber('Hottest absorber', hottest)] : [],
    source: 'Common practice, no source',
    finding: hottest > STEAM ? `The absorber reaches ${degrees(hottest)} (${formatHour(hour)}).` : '',
    advice:
      'Collectors that stand dry or without flow in the sun get far hotter than boiling water. Filling them then makes steam under pressure: cover them or wait for dusk. Keep the way from the collectors to their relief valve open, and pipe its outlet to a catch vessel. Follow the local code.',
  };
};

/** Always at the end, in this order. @internal */
export const GENERAL: readonly Rule[] = [roof, trades, steam];

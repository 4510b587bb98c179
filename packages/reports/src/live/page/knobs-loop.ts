/** Pump, module, limit, fluid. */
import type { SystemDesign } from '@noonloop/sim-core';
import { LEFT_OUT } from '../types.ts';
import { both, type Changes, field, type Ground, type Knob } from './knob.ts';

const onModule = ({ design }: Ground): boolean => design.pump.drive !== 'mains';

/** Rated power of one module. [W] */
const modulePower = ({ pv }: SystemDesign): number => pv.module.maximumPowerCurrent * pv.module.maximumPowerVoltage;

/** A module of another size of the same make: the same voltages, currents by its power. */
function sizedModule(power: number, { design }: Ground): Changes {
  const { module } = design.pv;
  const current = power / module.maximumPowerVoltage;
  const six = (value: number): number => Number(value.toPrecision(6));
  const scale = current / module.maximumPowerCurrent;
  return {
    'pv.module.maximumPowerCurrent': six(current),
    'pv.module.shortCircuitCurrent': six(scale * module.shortCircuitCurrent),
    'pv.module.currentTemperatureCoefficient': six(scale * module.currentTemperatureCoefficient),
    ...(module.area === null ? {} : { 'pv.module.area': six(scale * module.area) }),
  };
}

/** Pump, module, limit. */
export const LOOP: readonly Knob[] = [
  {
    kind: 'choice',
    id: 'pump.drive',
    label: 'What turns the pump',
    group: 'loop',
    paths: ['pump.drive', 'control.mode'],
    choices: () => [
      ['booster', 'Its own solar module, with booster'],
      ['direct', 'Its own solar module, nothing between'],
      ['mains', 'The mains, by a controller'],
    ],
    read: ({ design }) => design.pump.drive,
    write: (value) => ({ 'pump.drive': value, 'control.mode': value === 'mains' ? 'difference' : LEFT_OUT }),
  },
  {
    kind: 'number',
    id: 'pv.module',
    label: 'Solar module of the pump',
    group: 'loop',
    amount: 'power',
    paths: ['pv.module.maximumPowerCurrent', 'pv.module.shortCircuitCurrent', 'pv.module'],
    range: both([5, 100, 1]),
    shown: onModule,
    read: ({ design }) => Math.round(10 * modulePower(design)) / 10,
    write: sizedModule,
  },
  field('control.difference.start', {
    label: 'Controller starts at',
    group: 'loop',
    amount: 'difference',
    metric: [2, 20, 0.5],
    us: [4, 36, 1],
    shown: (ground) => !onModule(ground),
    help: 'So much warmer than the tank must the panels be',
  }),
  field('control.highLimit', {
    label: 'High limit of the tank',
    group: 'loop',
    amount: 'temperature',
    metric: [40, 99, 1],
    us: [104, 210, 1],
    none: { word: 'no limit', changes: { 'control.highLimit': null } },
    help: 'The pump stops when the top of the tank is so hot. Empty: no limit',
  }),
  field('loop.glycolMassFraction', { label: 'Glycol by mass', group: 'loop', amount: 'percent', metric: [0, 60, 1] }),
];

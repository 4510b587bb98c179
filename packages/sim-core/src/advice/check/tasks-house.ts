// Tasks at tank, taps and the heater behind.

import { fact } from '../../input/saying.ts';
import { heatsInTank } from '../../physics/backup/heater.ts';
import { because, hours, type Rule, type RuleContext, volume, where } from './task-rule.ts';

/** "Hard" and "soft" of the German detergents law of 2007: 14 and 8.4 °dH, from memory. [mol/m³] */
const HARD = 2.5;
const SOFT = 1.5;
/** Hardness that stands for one not given. Judgement. [mol/m³] */
const MIDDLING = 2;
/** Hours of a hot tank from which lime and anode are looked at sooner. Judgement. [h] */
const HOT = { lime: 1000, anode: 2000 };

/** Every task at tank and taps. */
export const houseTasks = (context: RuleContext): Rule[] => [
  ...tankTasks(context),
  ...reliefTasks(context),
  ...anodeTasks(context),
  ...tapTasks(context),
  ...heaterTasks(context),
];

const limeReasons = ({ hardness, wear: { hotTankHours, throughTank } }: RuleContext) => [
  because('through-tank', { volume: volume(throughTank) }),
  because('hot-tank', { hours: hours(hotTankHours) }),
  hardness === null ? because('hardness-unknown') : because('hardness', { hardness: fact(hardness, 'mol/m³') }),
];

function tankTasks(context: RuleContext): Rule[] {
  const { hardness, readyForFrost, wear } = context;
  const hard = (hardness ?? MIDDLING) >= HARD;
  const soft = (hardness ?? MIDDLING) < SOFT;
  const reasons = limeReasons(context);
  return [
    {
      code: 'flush',
      season: readyForFrost,
      everyMonths: hard ? 6 : 12,
      facts: {},
      reasons,
    },
    {
      code: 'descale',
      season: readyForFrost,
      everyMonths: hard && wear.hotTankHours > HOT.lime ? 24 : soft ? 72 : 48,
      facts: {},
      reasons,
    },
  ];
}

function reliefTasks({ design, spring, wear }: RuleContext): Rule[] {
  const { coldestMains, hottestTank, swell, tankRelieved } = wear;
  const opened =
    tankRelieved > 0 ? because('tank-relieved', { volume: volume(tankRelieved) }) : because('tank-never-relieved');
  const swelling = { swell: volume(swell), cold: fact(coldestMains, '°C'), hot: fact(hottestTank, '°C') };
  return [
    {
      code: 'tank-relief-look',
      season: [spring, 1],
      everyMonths: 3,
      facts: {},
      reasons: [opened],
    },
    {
      code: 'tank-relief-valve',
      season: [spring, 15],
      everyMonths: tankRelieved > 0 ? 6 : 12,
      facts: { relief: fact(design.tank.reliefTemperature, '°C') },
      reasons: [opened],
    },
    {
      code: 'potable-expansion',
      season: [spring, 15],
      everyMonths: 12,
      facts: swelling,
      reasons: [because('swell', swelling)],
    },
  ];
}

function anodeTasks(context: RuleContext): Rule[] {
  const { anode, hardness, spring, wear } = context;
  const soft = (hardness ?? MIDDLING) < SOFT;
  if (anode === 'none') return [];
  const reasons = limeReasons(context);
  if (anode === 'powered')
    return [
      {
        code: 'powered-anode',
        season: [spring, 15],
        everyMonths: 3,
        facts: {},
        reasons: reasons.slice(1),
      },
    ];
  return [
    {
      code: 'anode',
      season: [spring, 15],
      everyMonths: wear.hotTankHours > HOT.anode || soft ? 12 : 24,
      facts: {},
      reasons,
    },
    {
      code: 'hydrogen',
      season: [spring, 15],
      everyMonths: null,
      facts: {},
      reasons: [because('two-weeks-unused')],
    },
  ];
}

function tapTasks({ design, hardness, spring, wear }: RuleContext): Rule[] {
  const { mixingValve, tapTemperature, valveAccuracy, valveTemperature } = design.draw;
  const hard = (hardness ?? MIDDLING) >= HARD;
  const hot = { hours: hours(wear.hotTankHours), hottest: fact(wear.hottestTank, '°C') };
  const setting = mixingValve ? valveTemperature : tapTemperature;
  const facts = {
    setting: fact(setting, '°C'),
    most: fact(setting + (mixingValve ? valveAccuracy : 0), '°C'),
    hottest: fact(wear.hottestTank, '°C'),
  };
  const tap: Rule = {
    code: 'tap-temperature',
    season: [spring, 15],
    everyMonths: 3,
    facts,
    reasons: [because(mixingValve ? 'valve-alone' : 'no-valve', hot)],
  };
  if (!mixingValve) return [tap];
  const test: Rule = {
    code: 'mixing-valve',
    season: [spring, 15],
    everyMonths: hard ? 6 : 12,
    facts,
    reasons: [because('valve-alone', hot)],
  };
  return [tap, test];
}

function heaterTasks({ design, spring, wear }: RuleContext): Rule[] {
  const { heater } = design;
  const { hotDrawHours, hottestTank } = wear;
  const behind: Rule = {
    code: 'heater-inlet',
    season: [spring, 15],
    everyMonths: 60,
    facts: { hottest: fact(hottestTank, '°C') },
    reasons: where(true, because('hot-draws', { hours: hours(hotDrawHours), hottest: fact(hottestTank, '°C') })),
  };
  const rules = !heatsInTank(heater) && hotDrawHours > 0 ? [behind] : [];
  if (heater.carrier !== 'gas' && heater.carrier !== 'fuel') return rules;
  const reasons = [because('burns-fuel')];
  return [
    ...rules,
    {
      code: 'flue',
      season: [spring, 15],
      everyMonths: 12,
      facts: {},
      reasons,
    },
    {
      code: 'carbon-monoxide-alarm',
      season: [spring, 1],
      everyMonths: 1,
      facts: {},
      reasons,
    },
  ];
}

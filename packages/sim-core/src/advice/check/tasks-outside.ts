// Tasks at pump, module, panels and pipes out of doors.
import { fact } from '../../input/saying.ts';
import { because, hours, type Rule, type RuleContext } from './task-rule.ts';

/** Hours of a pump from which it is listened to twice a year. Judgement. [h] */
const MUCH_RUNNING = 4000;

/** Every task of electricity and roof. */
export const outsideTasks = (context: RuleContext): Rule[] => [...electricTasks(context), ...roofTasks(context)];

function electricTasks({ design, dusty, spring, wear }: RuleContext): Rule[] {
  const { pumpHours } = wear;
  const running = because('pump-hours', { hours: hours(pumpHours) });
  const rules: Rule[] = [
    {
      code: 'pump',
      season: [spring, 1],
      everyMonths: pumpHours > MUCH_RUNNING ? 6 : 12,
      facts: {},
      reasons: [running],
    },
    {
      code: 'sensors',
      season: [spring, 1],
      everyMonths: 24,
      facts: {},
      reasons: [because(design.control.mode === 'difference' ? 'starts-the-pump' : 'judged-by-them')],
    },
  ];
  if (design.pump.drive !== 'mains')
    rules.push({
      code: 'module-cleaning',
      season: [spring, 1],
      everyMonths: dusty ? 3 : 12,
      facts: {},
      reasons: [because('only-power'), running],
    });
  return rules;
}

function roofTasks({ readyForFrost, spring, wear }: RuleContext): Rule[] {
  const rules: Rule[] = [
    {
      code: 'roof-look',
      season: [spring, 1],
      everyMonths: 6,
      facts: {},
      reasons: [because('hottest-absorber', { hottest: fact(wear.hottestAbsorber, '°C') })],
    },
    {
      code: 'bonding',
      season: [spring, 15],
      everyMonths: 60,
      facts: {},
      reasons: [because('metal-on-the-roof')],
    },
  ];
  if (wear.firstFrost !== null)
    rules.push({
      code: 'winter-look',
      season: readyForFrost,
      everyMonths: 12,
      facts: {},
      reasons: [
        because('before-frost', { frost: fact(Math.trunc(wear.firstFrost / 24), 'day of the year') }),
        wear.freezeMargin >= 0
          ? because('freeze-margin', { margin: fact(wear.freezeMargin, 'K') })
          : because('freezes', { margin: fact(-wear.freezeMargin, 'K') }),
      ],
    });
  return rules;
}

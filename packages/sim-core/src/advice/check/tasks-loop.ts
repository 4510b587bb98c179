// Tasks at the collector loop: fluid, pressure, relief valve, strainer, fill connection.
import { fact } from '../../input/saying.ts';
import { because, hours, type Rule, type RuleContext, volume, where } from './task-rule.ts';

/** Hours above the limit that a fluid stands in its life: ten summers of a well-sized loop. Judgement. [h] */
const FLUID_LIFE_HOURS = 1500;
/** Life of a fluid that is never overheated. Common practice, no source. [years] */
const FLUID_LIFE_YEARS = 10;
/** Fluid that is tested twice a year: hours above its limit, or margin to freezing. Judgement. [h], [K] */
const STRAINED = { hours: 100, margin: 5 };
/** Stagnation from which a vessel is tested every year. Judgement. [h] */
const HARD_ON_VESSEL = 50;

/** Every task at the loop. */
export const loopTasks = (context: RuleContext): Rule[] => [
  ...fluidTasks(context),
  ...pressureTasks(context),
  ...reliefTasks(context),
  ...serviceTasks(context),
];

function fluidTasks({ beforeFrost, design, fluidAge, wear }: RuleContext): Rule[] {
  if (design.loop.fluid === 'water') return [];
  const { hoursOverFluidLimit: over, madeUp, freezeMargin } = wear;
  const limit = fact(design.loop.fluidLimit, '°C');
  const strained = over > STRAINED.hours || madeUp > 0 || freezeMargin < STRAINED.margin;
  const life = Math.min(FLUID_LIFE_YEARS, over > 0 ? FLUID_LIFE_HOURS / over : FLUID_LIFE_YEARS);
  const left = life - fluidAge;
  const heat = over > 0 ? because('over-limit', { limit, hours: hours(over) }) : because('never-over-limit', { limit });
  const frost =
    freezeMargin >= 0
      ? because('freeze-margin', { margin: fact(freezeMargin, 'K') })
      : because('freezes', { margin: fact(-freezeMargin, 'K') });
  return [
    {
      code: 'glycol-test',
      season: beforeFrost,
      everyMonths: strained ? 6 : 12,
      facts: {},
      reasons: [
        heat,
        ...where(madeUp > 0, because('made-up', { volume: volume(madeUp) })),
        frost,
        ...where(wear.firstFrost !== null, because('before-frost', { frost: frostDay(wear.firstFrost) })),
      ],
    },
    {
      code: 'glycol-change',
      season: beforeFrost,
      everyMonths: Math.max(12, Math.round(12 * life)),
      facts: { share: fact(design.loop.glycolMassFraction, '-') },
      reasons: [
        heat,
        because('fluid-life', { life: fact(life, 'years'), age: fact(fluidAge, 'years') }),
        ...where(left <= 0, because('overdue')),
      ],
    },
  ];
}

/** Day of the year of an hour; 0 where there is none. */
const frostDay = (hour: number | null) => fact(Math.trunc((hour ?? 0) / 24), 'day of the year');

function pressureTasks({ design, spring, wear }: RuleContext): Rule[] {
  const { loop } = design;
  const { boilingHours, lost, pressureSwing, relieved, stagnationHours } = wear;
  const swing = because('pressure-swing', { swing: fact(pressureSwing, 'Pa') });
  return [
    {
      code: 'loop-pressure',
      season: [spring, 1],
      everyMonths: lost > 0 || relieved > 0 ? 1 : 3,
      facts: { fill: fact(loop.fillPressure, 'Pa') },
      reasons: [swing, lost > 0 ? because('lost', { volume: volume(lost) }) : because('loses-nothing')],
    },
    {
      code: 'vessel-precharge',
      season: [spring, 15],
      everyMonths: stagnationHours > HARD_ON_VESSEL || relieved > 0 ? 12 : 24,
      facts: { precharge: fact(loop.vesselPrecharge, 'Pa') },
      reasons: [
        because('stagnation', { hours: hours(stagnationHours) }),
        ...where(boilingHours > 0, because('boiling', { hours: hours(boilingHours) })),
        swing,
        ...where(relieved > 0, because('relieved', { volume: volume(relieved) })),
      ],
    },
  ];
}

function reliefTasks({ design, spring, wear }: RuleContext): Rule[] {
  const { relieved, stagnationHours, stagnationMonth } = wear;
  const opened =
    relieved > 0
      ? because('relieved', { volume: volume(relieved) })
      : because('never-relieved', { relief: fact(design.loop.reliefPressure, 'Pa') });
  const reasons = [because('stagnation', { hours: hours(stagnationHours) }), opened];
  return [
    {
      code: 'catch-vessel',
      season: [spring, 1],
      everyMonths: relieved > 0 || stagnationHours > HARD_ON_VESSEL ? 1 : 3,
      facts: {},
      reasons,
    },
    {
      code: 'loop-relief-valve',
      // After the month with the most of it.
      season: stagnationMonth === null ? [spring, 15] : [(stagnationMonth + 1) % 12, 5],
      everyMonths: 12,
      facts: { relief: fact(design.loop.reliefPressure, 'Pa') },
      reasons,
    },
  ];
}

function serviceTasks({ design, spring, wear }: RuleContext): Rule[] {
  const { boilingHours, pumpHours } = wear;
  const { fluid, makeUp } = design.loop;
  const rules: Rule[] = [
    {
      code: 'strainer',
      season: [spring, 15],
      everyMonths: boilingHours > 0 ? 12 : 24,
      facts: {},
      reasons: [
        because('pump-hours', { hours: hours(pumpHours) }),
        ...where(boilingHours > 0, because('flakes', { hours: hours(boilingHours) })),
      ],
    },
  ];
  if (makeUp || fluid !== 'water')
    rules.push({
      code: 'backflow-preventer',
      season: [spring, 15],
      everyMonths: 12,
      facts: {},
      reasons: [because(makeUp ? 'fill-line' : 'fill-connection')],
    });
  return rules;
}

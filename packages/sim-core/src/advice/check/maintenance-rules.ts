// Each task of the calendar: how often, when, and why in the numbers of the run.
import { hours, litres, number, PRACTICE, type Rule, type RuleContext } from './maintenance-rule.ts';
import { water } from './maintenance-water.ts';

const HOT_LOOP =
  'Only on a cold loop, early or with covered panels: hot fluid and steam scald, and the loop is under pressure.';
/** Hours above the limit that a fluid stands in its life: ten summers of a well-sized loop. Judgement. [h] */
const FLUID_LIFE_HOURS = 1500;
/** Life of a fluid that is never overheated. Common practice, no source. [years] */
const FLUID_LIFE_YEARS = 10;

/** Every task that the design calls for. */
export function rulesOf(context: RuleContext): Rule[] {
  return [...fluid(context), ...pressure(context), ...water(context), ...electric(context), ...outside(context)];
}

function fluid({ autumn, design, fluidAge, wear }: RuleContext): Rule[] {
  if (design.loop.fluid === 'water') return [];
  const { hoursOverFluidLimit: over, madeUp, freezeMargin } = wear;
  const { fluidLimit } = design.loop;
  const strained = over > 100 || madeUp > 0 || freezeMargin < 5;
  const causes = [
    over > 0
      ? `the absorber is above the fluid’s limit of ${fluidLimit} °C for ${hours(over)} a year`
      : `the absorber never passes the fluid’s limit of ${fluidLimit} °C`,
    ...(madeUp > 0 ? [`${litres(madeUp)} of make-up water thin it`] : []),
    `the least margin to freezing is ${freezeMargin.toFixed(1)} K`,
  ];
  const life = Math.min(FLUID_LIFE_YEARS, over > 0 ? FLUID_LIFE_HOURS / over : FLUID_LIFE_YEARS);
  const left = Math.max(0.5, life - fluidAge);
  return [
    {
      code: 'glycol-test',
      what: 'Test the fluid: freezing point by refractometer, pH by strip, look and smell. Change it when pH is under 7, when it is dark or sour, or when it no longer protects.',
      season: [(autumn + 11) % 12, 15],
      everyMonths: strained ? 6 : 12,
      reason: `${causes.join('; ')}. ${strained ? 'Twice a year, one of them' : 'Once a year,'} in autumn before the frost.`,
      numbers: [
        number('hours above the fluid’s limit', over, 'h'),
        number('make-up', madeUp, 'm³'),
        number('margin to freezing', freezeMargin, 'K'),
      ],
      basis: `once a year: ${PRACTICE}; twice above 100 h, with make-up or under 5 K of margin: judgement; pH limit: from memory of fluid makers’ guides`,
      who: 'owner',
      caution: `${HOT_LOOP} Wear gloves and goggles. Ethylene glycol is poisonous, also to animals; old fluid goes to hazardous waste.`,
    },
    {
      code: 'glycol-change',
      what: 'Drain, flush and fill anew with the maker’s fluid at the share of the design, unless the test of that year is good.',
      season: [autumn, 1],
      everyMonths: Math.max(12, Math.round(12 * life)),
      reason: `with ${hours(over)} a year above ${fluidLimit} °C the fluid is expected to last some ${life.toFixed(0)} years; it is ${fluidAge} years old, which leaves about ${left.toFixed(1)}.`,
      numbers: [number('expected life', life, 'years'), number('age', fluidAge, 'years')],
      basis: `10 years, or ${FLUID_LIFE_HOURS} h above the limit: judgement; the test decides`,
      who: 'licensed trade',
      caution: `${HOT_LOOP} Filling empty hot collectors makes steam at once.`,
    },
  ];
}

function pressure({ design, spring, wear }: RuleContext): Rule[] {
  const { loop } = design;
  const bar = (value: number): string => `${(value / 1e5).toFixed(2)} bar`;
  const { boilingHours, lost, pressureSwing, relieved, stagnationHours, stagnationMonth } = wear;
  const hard = stagnationHours > 50 || relieved > 0;
  const stands = `the loop stagnates for ${hours(stagnationHours)} a year${boilingHours > 0 ? ` and boils for ${hours(boilingHours)}` : ''}`;
  return [
    {
      code: 'loop-pressure',
      what: `Read the gauge in the morning with cold panels and write it down; the filling was at ${bar(loop.fillPressure)}.`,
      season: [spring, 1],
      everyMonths: lost > 0 || relieved > 0 ? 1 : 3,
      reason: `the pressure moves by ${bar(pressureSwing)} over the year by warmth alone; ${lost > 0 ? `${litres(lost)} are lost in the run` : 'the run loses nothing'}.`,
      numbers: [number('swing', pressureSwing, 'Pa'), number('lost', lost, 'm³')],
      basis: PRACTICE,
      who: 'owner',
      caution:
        'Read only; do not refill a hot loop. A gauge near zero with sun on the panels: leave the system alone until dusk.',
    },
    {
      code: 'vessel-precharge',
      what: `Test the gas of the expansion vessel with the liquid side shut off and empty; set it to ${bar(loop.vesselPrecharge)}.`,
      season: [spring, 15],
      everyMonths: hard ? 12 : 24,
      reason: `${stands}; the vessel takes a swing of ${bar(pressureSwing)}${relieved > 0 ? ` and did not keep ${litres(relieved)} from leaving by the relief valve` : ''}.`,
      numbers: [
        number('pre-charge', loop.vesselPrecharge, 'Pa'),
        number('stagnation', stagnationHours, 'h'),
        number('swing', pressureSwing, 'Pa'),
      ],
      basis: `yearly to every second year: ${PRACTICE}`,
      who: 'licensed trade',
      caution: `${HOT_LOOP} A vessel that is not emptied on its liquid side shows a wrong pressure.`,
    },
    {
      code: 'loop-relief-valve',
      what: 'Look for traces under the relief valve and at its catch vessel; lift it once so that it does not stick, and see that it shuts.',
      season: stagnationMonth === null ? [spring, 15] : [(stagnationMonth + 1) % 12, 5],
      everyMonths: 12,
      reason:
        relieved > 0
          ? `it lets out ${litres(relieved)} in the run: find out why before it is relied on.`
          : `${stands} and the pressure stays under the ${bar(loop.reliefPressure)} of the valve${stagnationMonth === null ? '' : '; after the month with the most of it'}.`,
      numbers: [number('let out', relieved, 'm³'), number('stagnation', stagnationHours, 'h')],
      basis: PRACTICE,
      who: 'licensed trade',
      caution: `${HOT_LOOP} The outlet must lead to a vessel and never be closed.`,
    },
    {
      code: 'strainer',
      what: 'Shut off, open and rinse the strainer; vent the loop afterwards.',
      season: [spring, 15],
      everyMonths: boilingHours > 0 ? 12 : 24,
      reason: `the pump moves fluid for ${hours(wear.pumpHours)} a year${boilingHours > 0 ? `; boiling (${hours(boilingHours)}) leaves flakes of old fluid` : ''}.`,
      numbers: [number('pump hours', wear.pumpHours, 'h'), number('boiling', boilingHours, 'h')],
      basis: PRACTICE,
      who: 'owner',
      caution: HOT_LOOP,
    },
  ];
}

function electric({ design, dusty, spring, wear }: RuleContext): Rule[] {
  const { pumpHours } = wear;
  const rules: Rule[] = [
    {
      code: 'pump',
      what: 'Listen to the pump at a start and in full sun; note flow and the two pipe temperatures for later comparison.',
      season: [spring, 1],
      everyMonths: pumpHours > 4000 ? 6 : 12,
      reason: `it runs ${hours(pumpHours)} a year.`,
      numbers: [number('pump hours', pumpHours, 'h')],
      basis: PRACTICE,
      who: 'owner',
      caution: 'Pipes can be hot. Keep off live terminals.',
    },
    {
      code: 'sensors',
      what: 'Compare each thermometer with a second one, and the gauge with another at the same pressure.',
      season: [spring, 1],
      everyMonths: 24,
      reason:
        design.control.mode === 'difference'
          ? 'the controller starts and stops the pump by them, and so do you.'
          : 'you judge the system by them.',
      numbers: [],
      basis: PRACTICE,
      who: 'owner',
      caution: 'Hot surfaces; change a gauge only on a cold loop with its valve shut.',
    },
  ];
  if (design.pump.drive !== 'mains') {
    rules.push({
      code: 'module-cleaning',
      what: 'Rinse the PV module with water from the ground, look at plug and cable.',
      season: [spring, 1],
      everyMonths: dusty ? 3 : 12,
      reason: `the pump has no other power, and runs ${hours(pumpHours)} a year; dirt makes it start later on dull mornings.`,
      numbers: [number('pump hours', pumpHours, 'h')],
      basis: `${PRACTICE}; four times where it is dusty: judgement`,
      who: 'owner',
      caution: 'Modules are live in light. No cold water on hot glass, no work on a roof without fall protection.',
    });
  }
  return rules;
}

function outside({ autumn, spring, wear }: RuleContext): Rule[] {
  const rules: Rule[] = [
    {
      code: 'roof-look',
      what: 'Look at panels, pipe insulation and fixings from the ground: fog, cracks, bird damage, new shade.',
      season: [spring, 1],
      everyMonths: 6,
      reason: `the absorber reaches ${wear.hottestAbsorber.toFixed(0)} °C in the run; insulation and seals age by it.`,
      numbers: [number('hottest absorber', wear.hottestAbsorber, '°C')],
      basis: PRACTICE,
      who: 'owner',
      caution: 'From the ground, with binoculars. Roofs only with fall protection; glass of standing panels is hot.',
    },
  ];
  if (wear.firstFrost !== null) {
    rules.push({
      code: 'winter-look',
      what: 'Before winter: close drains of outdoor taps, see that pipes out of doors are insulated to the last hand, and that the fluid’s test is done.',
      season: [autumn, 20],
      everyMonths: 12,
      reason: `the least margin between fluid and freezing is ${wear.freezeMargin.toFixed(1)} K in the run.`,
      numbers: [number('margin to freezing', wear.freezeMargin, 'K')],
      basis: PRACTICE,
      who: 'owner',
      caution: 'Do not climb on an icy roof to clear panels.',
    });
  }
  return rules;
}

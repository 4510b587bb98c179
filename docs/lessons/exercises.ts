/** The six lessons as cases of the page that plays a week; the lessons' scripts compute the same houses. */
import type { LiveExercise, Turned } from '@noonloop/reports';
import type { SystemInput } from '@noonloop/sim-core';

/** Where the page begins: the house of the lessons with a limit, as a real one has. */
export const FIRST: SystemInput = {
  name: 'house of the lessons',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
  control: { highLimit: 85 },
};

/** First days of weeks: 9 July, with the 12th; 10 July, the first of the holiday; deep winter; high summer. */
const [LESSON_DAY, HOLIDAY, WINTER, SUMMER] = [189, 190, 14, 196];

/** A module of some watts: its currents go by its size. */
const moduleOf = (watts: number): Turned => ({
  'pv.module.shortCircuitCurrent': 1.24 * (watts / 20),
  'pv.module.maximumPowerCurrent': 1.14 * (watts / 20),
  'pv.module.currentTemperatureCoefficient': 0.0007 * (watts / 20),
});

const away = { 'draw.holidays': ['07-10..07-23'], 'page.week': HOLIDAY } as const;

/** A lesson each, in their order. */
export const EXERCISES: readonly LiveExercise[] = [
  {
    title: 'Lesson 1: layers',
    question: 'Why does a tank deliver more when nobody stirs it?',
    cases: [
      { label: 'layered', set: { 'control.highLimit': null, 'page.week': LESSON_DAY } },
      {
        label: 'stirred',
        set: { 'control.highLimit': null, 'tank.verticalConductivity': 100, 'page.week': LESSON_DAY },
      },
    ],
  },
  {
    title: 'Lesson 2: draw and mixing',
    question: 'How much hot water is in 200 L at the tap?',
    cases: [
      { label: 'a calm inlet', set: { 'control.highLimit': null, 'page.week': LESSON_DAY } },
      {
        label: 'an inlet that jets',
        set: { 'control.highLimit': null, 'tank.inletDiameter': '10 mm', 'page.week': LESSON_DAY },
      },
    ],
  },
  {
    title: 'Lesson 3: coil size',
    question: 'Is twice the coil worth twice the money?',
    cases: [2, 4, 12, 24].map((length) => ({
      label: `${length} m`,
      set: { 'control.highLimit': null, 'coil.length': `${length} m`, 'page.week': LESSON_DAY },
    })),
  },
  {
    title: 'Lesson 4: PV start',
    question: 'How large a module does the pump need?',
    cases: [2.5, 10, 20, 40].map((watts) => ({
      label: `${watts} W`,
      set: { 'control.highLimit': null, ...moduleOf(watts), 'page.week': LESSON_DAY },
    })),
  },
  {
    title: 'Lesson 5: stagnation',
    question: 'What does the sun do while nobody is at home?',
    cases: [2, 3, 4].flatMap((panels) =>
      [null, 85].map((limit) => ({
        label: `${panels} panels, ${limit === null ? 'no limit' : 'limit'}`,
        set: { 'array.panels': panels, 'control.highLimit': limit, ...away },
      })),
    ),
  },
  {
    title: 'Lesson 6: seasons',
    question: 'Why does a roof that is too large in July fail in January?',
    cases: [20, 40, 65].flatMap((tilt) => [
      { label: `${tilt}° in winter`, set: { 'control.highLimit': null, 'array.tilt': tilt, 'page.week': WINTER } },
      { label: `${tilt}° in summer`, set: { 'control.highLimit': null, 'array.tilt': tilt, 'page.week': SUMMER } },
    ]),
  },
];

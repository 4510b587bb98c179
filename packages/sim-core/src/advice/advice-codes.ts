/** All notes and cautions of sizing, freezing and survey, by code; their sentences are in `@noonloop/reports`. */
export const ADVICE_CODES = [
  // sizePipe.
  'no-common-tube',
  'too-slow-for-air',
  'no-common-insulation',
  'insulation-below-codes',
  'insulation-codes-differ',
  'insulation-near-collectors',
  // sizePumpDrive.
  'pump-never-starts',
  'pump-starts-late',
  'pump-starts-early',
  'better-threshold',
  'better-module',
  'controller-is-better',
  'little-flow',
  'much-flow',
  'dull-morning',
  'module-is-live',
  // sizeLoopPressure and potableExpansion.
  'steam-reaches-pump',
  'nothing-that-shuts',
  'steam-and-glycol-scald',
  'vessel-must-bear',
  'water-must-find-room',
  // glycolForSite, glycolAgeing and freezeAtSite.
  'mix-before-filling',
  'least-share-governs',
  'ethylene-glycol-is-poison',
  'more-than-needed',
  'test-ph',
  'test-reserve',
  'test-strength',
  'sample-cold',
  'fluid-may-split',
  // compareCollectors.
  'hot-when-dry',
  'tubes-and-snow',
  'roof-bears-weight-and-wind',
  'used-without-warranty',
  // rateFromSurvey.
  'panel-weight',
  'plate-is-hot',
  'old-glass',
  'press-tubes-first',
] as const;

/** One of {@link ADVICE_CODES}. */
export type AdviceCode = (typeof ADVICE_CODES)[number];

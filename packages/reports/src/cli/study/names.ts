/** Kinds of study that a study file names. */
export const STUDIES = ['sweep', 'best-of', 'sensitivity', 'uncertainty'] as const;

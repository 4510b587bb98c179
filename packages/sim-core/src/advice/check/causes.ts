// What may be wrong, as codes; the words are those of reports.
import type { SystemDesign } from '../../design/design.ts';
import type { Saying } from '../../input/saying.ts';

/** All causes that are weighed. */
export const CAUSES = [
  'healthy',
  'no-flow',
  'pump-fault',
  'high-limit',
  'lost-fluid',
  'vessel-charge',
  'scaled-coil',
  'sediment',
  'dirty-or-shaded',
  'check-valve',
  'dip-tube',
  'mixing-valve',
  'thermostat',
  'sensor-wrong',
] as const;

/** What may be the matter. */
export type CauseCode = (typeof CAUSES)[number];

/** Forms and degrees of the causes. */
export const FORMS = [
  'healthy',
  'stopped',
  'throttled',
  'trickle',
  'pump-stands',
  'weak-module',
  'very-weak-module',
  'limit-early',
  'limit-far-too-early',
  'seeping',
  'leaking',
  'pressure-fallen',
  'pressure-gone',
  'charge-low',
  'charge-gone',
  'thin-scale',
  'scale',
  'thick-scale',
  'half-buried',
  'nearly-buried',
  'light-lost',
  'most-light-lost',
  'shade-left',
  'shade-right',
  'check-valve-open',
  'dip-tube-leaks',
  'dip-tube-broken',
  'valve-cool',
  'thermostat-low',
  'thermostat-high',
  'gauge-high',
  'gauge-low',
  'gauge-stuck',
] as const;

/** Form of a cause. */
export type FormCode = (typeof FORMS)[number];

/** One form of a fault that can be run. */
export interface Fault {
  readonly cause: CauseCode;
  /** Mild to severe; one alone where there are no degrees. Each leaves the healthy design as it is and gives another. */
  readonly degrees: readonly Degree[];
  /** Whether someone at the pump hears it as in a healthy system, though nothing flows. */
  readonly turnsAsHealthy: boolean;
  /** Whether it may begin within the log. */
  readonly suddenly: boolean;
}

/** A degree of a fault. */
export interface Degree {
  readonly form: Saying<FormCode>;
  readonly apply: (design: SystemDesign) => SystemDesign;
}

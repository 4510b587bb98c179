/** A component of one's own: plain functions that a run calls in every step. */
import { DesignError, type DesignIssue, quote } from '../input/errors.ts';

/** What such a function sees; one object of a run, filled anew in each step. Read it, and keep none of it. */
export interface OwnState {
  /** Hour of the year, 0 to 8759. */
  hour: number;
  /** Length of the step. [s] */
  duration: number;
  /** Outdoor air. [°C] */
  ambient: number;
  /** On the collector plane, 0 in the dark. [W/m²] */
  irradiance: number;
  /** Absorber along the flow, inlet first. [°C] */
  readonly absorber: Readonly<Float64Array>;
  /** Tank nodes, bottom first. [°C] */
  readonly tank: Readonly<Float64Array>;
}

/** Functions of one's own; each may be left out. What they do is theirs to answer for: a run checks that its numbers stay finite. */
export interface OwnComponents {
  /**
   * A collector's gain: light turned into heat in the absorber, less what the sky takes, in place of `absorbed`. Not with groups. [W/m²]
   */
  readonly gain?: (absorbed: number, state: OwnState) => number;
  /** A controller's decision: whether the pump is asked to turn, in place of `wanted`. Power, limits and outages still have their say. */
  readonly wants?: (wanted: boolean, state: OwnState) => boolean;
}

/** @throws {@link DesignError} where a component is no function, or unknown. */
export function requireOwn(own: OwnComponents, hasGroups: boolean): void {
  const issues: DesignIssue[] = Object.entries(own).flatMap(([name, part]) => {
    const path = `options.own.${name}`;
    if (name !== 'gain' && name !== 'wants')
      return [{ path, found: 'a component of this name', expected: 'gain or wants', remedy: 'Check the spelling.' }];
    if (part !== undefined && typeof part !== 'function')
      return [{ path, found: quote(part), expected: 'a function', remedy: 'Give one, or leave it out.' }];
    if (name === 'gain' && part !== undefined && hasGroups)
      return [{ path, found: 'a gain with array.groups', expected: 'an array of one group', remedy: 'Leave one out.' }];
    return [];
  });
  if (issues.length > 0) throw new DesignError(issues);
}

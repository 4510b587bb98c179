import type { DesignAssumption, SecondTankDesign, TankDesign } from '../design/design.ts';
import { DesignError, type DesignIssue } from '../input/errors.ts';
import type { Fill } from './derived-array.ts';
import type { CheckedInput } from './schema/system.ts';

/** Outside of a tank, floor and lid with it. [m²] */
const surfaceOf = ({ height, volume }: Pick<TankDesign, 'height' | 'volume'>): number =>
  2 * Math.sqrt(Math.PI * height * volume) + (2 * volume) / height;

/**
 * Defaults of a second tank: what is not said of it is as in the first, or in proportion.
 *
 * @param first - The first tank, every default filled.
 * @returns `null` where there is none.
 * @throws {@link DesignError} for what two tanks are not modelled with.
 */
export function secondTankDefaults(
  { coil, control, loop, tank: { second } }: CheckedInput,
  first: Omit<TankDesign, 'second'>,
  fill: Fill,
): SecondTankDesign | null {
  if (second === null) return null;
  refuse(control, loop, second);
  const as = <T extends DesignAssumption['value']>(field: string, given: T | undefined, value: T, unit: string) =>
    fill(`tank.second.${field}`, given, value, unit, 'as the first tank');
  const volume = as('volume', second.volume, first.volume, 'm³');
  const height = fill(
    'tank.second.height',
    second.height,
    first.height * Math.cbrt(volume / first.volume),
    'm',
    'as slender as the first tank',
  );
  if (second.coil === undefined) as('coil', undefined, JSON.stringify(coil), '');
  refuseDeepSediment('tank.second.sedimentDepth', second.sedimentDepth, height);
  return {
    ...second,
    volume,
    height,
    lossCoefficient: fill(
      'tank.second.lossCoefficient',
      second.lossCoefficient,
      first.lossCoefficient * (surfaceOf({ height, volume }) / surfaceOf(first)),
      'W/K',
      'as well insulated as the first tank: in proportion to its outside',
    ),
    nodes: as('nodes', second.nodes, first.nodes, ''),
    verticalConductivity: as(
      'verticalConductivity',
      second.verticalConductivity,
      first.verticalConductivity,
      'W/(m·K)',
    ),
    initialTemperature: as('initialTemperature', second.initialTemperature, first.initialTemperature, '°C'),
    reliefTemperature: as('reliefTemperature', second.reliefTemperature, first.reliefTemperature, '°C'),
    ratedTemperature: as('ratedTemperature', second.ratedTemperature, first.ratedTemperature, '°C'),
    coil: second.coil ?? coil,
  };
}

/** A tank more than half full of sediment is no tank. */
export function refuseDeepSediment(path: string, depth: number, height: number): void {
  if (depth <= 0.5 * height) return;
  const expected = `at most half of the tank’s height, ${(0.5 * height).toFixed(2)} m`;
  throw new DesignError([{ path, found: `${depth} m`, expected, remedy: 'Check depth and height.' }]);
}

/** Refuses what a second tank is not modelled with, and a valve that never turns. */
function refuse(
  control: CheckedInput['control'],
  loop: CheckedInput['loop'],
  { charging, divertAt }: NonNullable<CheckedInput['tank']['second']>,
): void {
  const issues: DesignIssue[] = [];
  if (charging === 'first') return;
  const found = `"${charging}"`;
  const remedy = 'Say "first", or leave tank.second out and count its water to the tank.';
  if (loop.exchanger !== 'coil' || loop.layout === 'direct') {
    const expected = '"first": a plate exchanger, or the tank’s own water in the collectors, is modelled with one tank';
    issues.push({ path: 'tank.second.charging', found, expected, remedy });
  }
  if (!loop.checkValve) {
    const expected = '"first" where loop.checkValve is false: flow by buoyancy is modelled through one coil only';
    issues.push({ path: 'tank.second.charging', found, expected, remedy });
  }
  if (charging === 'in-turn' && control.nightCooling !== null) {
    const expected = '"series", "first" or "second" with control.nightCooling';
    issues.push({ path: 'tank.second.charging', found, expected, remedy: 'Leave one of the two out.' });
  }
  const { highLimit } = control;
  if (charging === 'in-turn' && highLimit !== null && divertAt > highLimit) {
    const expected = `at most the high limit, ${highLimit} °C, or the valve never turns for it`;
    issues.push({ path: 'tank.second.divertAt', found: `${divertAt} °C`, expected, remedy: 'Give less.' });
  }
  if (issues.length > 0) throw new DesignError(issues);
}

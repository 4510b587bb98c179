/** The working of `sizeArray`. */
import type { SystemDesign } from '../../design/design.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import { WATER_HEAT_CAPACITY } from '../../physics/tank/tank.ts';
import { bothTanks } from '../../physics/tank/tank-pair.ts';
import type { UsefulLight } from './array-light.ts';
import type { MonthlyReckoning } from './array-months.ts';
import { KWH } from './working.ts';

/** What was found. */
interface Found {
  /** Month that the fewest panels cover, 0 to 11. */
  readonly best: number;
  readonly useful: UsefulLight;
  readonly systemShare: number;
  readonly panels: number;
  readonly panelsForSummer: number;
  readonly yearShare: number;
}

/** Lines of the working. */
export function arraySteps(design: SystemDesign, reckoned: MonthlyReckoning, found: Found): WorkingStep[] {
  const { draw, tank } = design;
  const { demand, mains, perPanel, standingLoss, toCover } = reckoned;
  const { best, panels, panelsForSummer, systemShare, useful, yearShare } = found;
  const { collector } = design.array;
  const month = [best + 1, 'month'] as const;
  const tap = [draw.tapTemperature, '°C'] as const;
  const d = [reckoned.coveringFluid - useful.air, 'K'] as const;
  const least = toCover[best] ?? null;
  return [
    line('array-demand', [demand[best]!, 'J'], {
      month,
      heat: [WATER_HEAT_CAPACITY / KWH, 'Wh/(L·K)'],
      volume: [draw.dailyVolume, 'm³'],
      tap,
      mains: [mains[best]!, '°C'],
    }),
    line('array-tank-loss', [standingLoss, 'J'], {
      loss: [bothTanks(tank).lossCoefficient, 'W/K'],
      tap,
      room: [tank.roomTemperature, '°C'],
    }),
    line('array-gain', [useful.gain, 'J/m²'], {
      month,
      eta0: [collector.eta0, '1'],
      light: [useful.usefulDaily, 'J/m²'],
      a1: [useful.a1, 'W/(m²·K)'],
      a2: [collector.a2, 'W/(m²·K²)'],
      d,
      time: [useful.usefulTime / 3600, 'h'],
    }),
    line('array-panel-heat', [perPanel[best]!, 'J'], {
      share: [systemShare, '1'],
      area: [collector.area, 'm²'],
      gain: [useful.gain, 'J/m²'],
    }),
    line('array-panels', [panelsForSummer, '-'], {
      demand: [demand[best]!, 'J'],
      loss: [standingLoss, 'J'],
      perPanel: [perPanel[best]!, 'J'],
      least: least === null ? 'none' : [least, '1'],
    }),
    line('array-year-share', [yearShare, '-'], { panels: [panels, '1'] }),
  ];
}

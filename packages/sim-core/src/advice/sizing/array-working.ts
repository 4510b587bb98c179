/** The working of `sizeArray`. */
import type { SystemDesign } from '../../design/design.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { WATER_HEAT_CAPACITY } from '../../physics/tank/tank.ts';
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
  const month = best + 1;
  const d = reckoned.coveringFluid - useful.air;
  const least = toCover[best] ?? null;
  return [
    line(
      `demand of a day in month ${month}`,
      'Q = ρ c V (t_tap − t_mains)',
      `${show(WATER_HEAT_CAPACITY / KWH, 5)} kWh/(m³·K) × ${show(draw.dailyVolume)} m³ × (${show(draw.tapTemperature)} − ${show(mains[best]!)}) K`,
      [demand[best]!, 'J'],
      'heat of water; mains as in the design',
    ),
    line(
      'loss of the tank while they cover it',
      'Q_l = UA (t_tap − t_room) 24 h',
      `${show(tank.lossCoefficient)} W/K × (${show(draw.tapTemperature)} − ${show(tank.roomTemperature)}) K × 24 h`,
      [standingLoss, 'J'],
      'tank of the design, as warm as the taps want',
    ),
    line(
      `gain of 1 m² in month ${month}`,
      'q = η0 H_u − (a1 d + a2 d²) N_u',
      `${show(collector.eta0)} × ${show(useful.usefulDaily / KWH)} kWh − (${show(useful.a1)} × ${show(d)} + ${show(collector.a2)} × ${show(d)}²) × ${show(useful.usefulTime / 3600)} h/1000`,
      [useful.gain, 'J/m²'],
      'ISO 9806 line over the hours with gain; d at the mean air of those hours, the value hour by hour',
    ),
    line(
      'heat of one panel',
      's A q',
      `${show(systemShare)} × ${show(collector.area)} m² × ${show(useful.gain / KWH)} kWh/m²`,
      [perPanel[best]!, 'J'],
      's: judgement',
    ),
    line(
      'panels for that month',
      'n = (Q + Q_l)/(s A q), the fewest that cover 95 %',
      `(${show(demand[best]! / KWH)} + ${show(standingLoss / KWH)}) kWh/${show(perPanel[best]! / KWH)} kWh = ${least === null ? 'none' : show(least, 3)}`,
      [panelsForSummer, '-'],
      'the month with most surplus: more panels stand hot in it; fewer leave the tank colder and bring more each',
    ),
    line(
      'share of the year',
      'Σ days c Q/Σ days Q,  c Q = n s A q(t + Δ) − UA (t − t_room) 24 h,  t = t_mains + c (t_tap − t_mains)',
      `${panels} panels, twelve months`,
      [yearShare, '-'],
      'month by month, the fluid Δ above the tank; a simulation has the last word',
    ),
  ];
}

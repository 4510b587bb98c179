import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { arrayArea } from '../../physics/collector/groups.ts';
import { WATER_HEAT_CAPACITY } from '../../physics/tank/tank.ts';
import { KWH, PRACTICE, stockSize } from './working.ts';

const optionsSchema = z.strictObject({
  dailyGain: quantity('energyPerArea', 1e5, 4e7).optional(),
  startTemperature: quantityOr(
    'temperature',
    1,
    60,
    30,
    'judgement: mean of the tank on a summer morning after a day’s use',
  ),
  maximumTemperature: quantityOr('temperature', 40, 98, 80, `below the usual high limits of 85 to 95 °C, ${PRACTICE}`),
  daysOfDraw: quantityOr('fraction', 0.5, 5, 1.25, `one to one and a half days of hot water, ${PRACTICE}`),
});

/** What {@link sizeTank} may be told; each has a default. */
export interface TankSizingOptions {
  /** Gain of a bright day, such as `bestDay` of `sizeArray`, 1e5 to 4e7. Default 1.15e7 (3.2 kWh/m²), judgement. [J/m²] */
  readonly dailyGain?: Quantity;
  /** Mean of the tank on a summer morning, 1 to 60. Default 30, judgement. [°C] */
  readonly startTemperature?: Quantity;
  /**
   * Mean that a bright day may bring it to, 40 to 98. Default 80, below the usual high limits; common practice, no source. [°C]
   */
  readonly maximumTemperature?: Quantity;
  /** Days of hot water that it must hold, 0.5 to 5. Default 1.25, common practice, no source. [-] */
  readonly daysOfDraw?: Quantity;
}

/** Gain of a bright summer day where none is given: judgement. [J/m²] */
const BRIGHT_DAY = 3.2 * KWH;

/** Tanks as they are sold, common practice, no source. [m³] */
const TANKS = [0.12, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.75, 1, 1.5, 2, 3, 5] as const;

/** How large a tank, and why. */
export interface TankSizing {
  /** Volume needed: the larger of the two below. [m³] */
  readonly volume: number;
  /** Next size that is sold. [m³] */
  readonly stockVolume: number;
  /** That takes a bright day's gain without passing the highest temperature. [m³] */
  readonly forTheSun: number;
  /** That holds the days of hot water. [m³] */
  readonly forTheDraw: number;
  /** Of {@link volume}. [m³/m²] */
  readonly volumePerArea: number;
  /** Mean of the stock tank after a bright day with no draw. [°C] */
  readonly afterBrightDay: number;
  /** The working. */
  readonly steps: readonly WorkingStep[];
}

/**
 * How large a tank suits an array and a household.
 *
 *     for the sun:   V = A q/(ρ c (t_max − t_start))
 *     for the draw:  V = days × V_day (t_tap − 10 °C)/(60 °C − 10 °C)
 *
 * Common practice stands at 50 to 75 litres for each m² of collector; the first formula says where that comes from.
 *
 * @param design - Array and draw, from `defineSystem`.
 * @param options - `dailyGain` of a bright day, such as `bestDay` of `sizeArray`, and temperatures.
 * @throws {@link DesignError} listing all faults of the options at once.
 */
export function sizeTank(design: SystemDesign, options: TankSizingOptions = {}): TankSizing {
  const { dailyGain = BRIGHT_DAY, startTemperature, daysOfDraw, ...rest } = checkInput(optionsSchema, options);
  const maximumTemperature = Math.max(rest.maximumTemperature, startTemperature + 5);
  const { array, draw } = design;
  const area = arrayArea(array);
  const rise = maximumTemperature - startTemperature;
  const forTheSun = (area * dailyGain) / (WATER_HEAT_CAPACITY * rise);
  const hotShare = Math.max(draw.tapTemperature - 10, 0) / 50;
  const forTheDraw = daysOfDraw * draw.dailyVolume * hotShare;
  const volume = Math.max(forTheSun, forTheDraw);
  const stockVolume = stockSize(TANKS, volume);
  const gain = [dailyGain, 'J/m²'] as const;
  const steps = [
    line('tank-for-sun', [forTheSun, 'm³'], {
      area: [area, 'm²'],
      gain,
      heat: [WATER_HEAT_CAPACITY / KWH, 'Wh/(L·K)'],
      highest: [maximumTemperature, '°C'],
      start: [startTemperature, '°C'],
    }),
    line('tank-for-draw', [forTheDraw, 'm³'], {
      days: [daysOfDraw, '1'],
      volume: [draw.dailyVolume, 'm³'],
      hotShare: [hotShare, '1'],
    }),
    line('tank-per-area', [volume / area, 'm³/m²'], { volume: [volume, 'm³'], area: [area, 'm²'] }),
    line('tank-sold', [stockVolume, 'm³'], { sold: [TANKS, 'm³'] }),
  ];
  return {
    volume,
    stockVolume,
    forTheSun,
    forTheDraw,
    volumePerArea: volume / area,
    afterBrightDay: startTemperature + (area * dailyGain) / (WATER_HEAT_CAPACITY * stockVolume),
    steps,
  };
}

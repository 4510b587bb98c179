/** Taps and heater, docs/theory/draw.md and backup.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import { drawProfile } from '@noonloop/sim-core/formulas';
import { WATER } from './tank.ts';

type HeaterDesign = SystemDesign['heater'];

/** What the taps want in a step: mixed water [m³] and its flow while they run [m³/s]. */
export interface Wanted {
  readonly volume: number;
  readonly flow: number;
}

/** Mixed water of the hours, and where in them it falls. */
export function tapsOf({ draw }: SystemDesign, hours: number, mainsAt: (hour: number) => number) {
  const holidays = draw.holidays.map((span) => span.split('..').map((day) => Number(day.slice(3)) - 1));
  const away = (hour: number) => holidays.some(([from, to]) => hour >= 24 * from! && hour < 24 * (to! + 1));
  const profile = draw.profile === null ? null : drawProfile(draw.profile);
  const shares = draw.hourlyShares.reduce((sum, share) => sum + share, 0);
  const volume = Float64Array.from({ length: hours }, (_, hour) => {
    if (away(hour)) return 0;
    const share = draw.hourlyShares[hour % 24]! / shares;
    if (!draw.keepsProfileHeat) return draw.dailyVolume * share;
    return (profile!.dailyEnergy! * share) / (WATER * Math.max(draw.tapTemperature - mainsAt(hour), 5));
  });
  const events = profile?.events ?? [];
  /** Of an hour's water, from one second of it to another. */
  const within = (hour: number, from: number, to: number): Wanted => {
    const flowOf = (water: number, flow: number): Wanted => ({
      volume: water,
      flow: Math.max(flow > 0 ? flow : draw.flow, water / (to - from)),
    });
    if (events.length === 0) return flowOf((volume[hour]! * (to - from)) / 3600, 0);
    const ofHour = events.filter(({ start }) => Math.trunc(start / 3600) === hour % 24);
    const heat = ofHour.reduce((sum, { energy }) => sum + energy, 0);
    let [share, flow] = [0, 0];
    for (const event of ofHour) {
      const start = event.start % 3600;
      const length = event.volume / event.flow;
      const overlap = Math.max(0, Math.min(to, start + length) - Math.max(from, start));
      share += ((event.energy / heat) * overlap) / length;
      flow += ((event.energy / heat) * overlap * event.flow) / length;
    }
    return flowOf(volume[hour]! * share, share > 0 ? flow / share : 0);
  };
  return { volume, within };
}

/** What a step asks of the water heater. */
export interface TapStep extends Wanted {
  readonly mains: number;
  readonly seconds: number;
}

/** What a heater did in a step. */
export interface HeaterStep {
  /** Hot water, and its temperature. */
  readonly hot: number;
  readonly outlet: number;
  readonly burner: number;
  readonly loss: number;
  /** Whether an instantaneous heater let the water pass. */
  readonly unfired: boolean;
}

const hotShare = (target: number, mains: number, hot: number): number =>
  mains >= target ? 0 : hot <= target ? 1 : (target - mains) / (hot - mains);

/** A heater behind the tank or in it, with its state. */
export class ReferenceHeater {
  temperature: number;
  out = false;
  private readonly capacity: number;

  readonly design: HeaterDesign;
  private readonly target: number;

  constructor(design: HeaterDesign, target: number) {
    this.design = design;
    this.target = target;
    this.temperature = design.setTemperature;
    this.capacity = design.volume * WATER;
  }

  get stored(): boolean {
    return this.design.volume > 0;
  }

  /** Whether it needs the mains. */
  get needsMains(): boolean {
    return this.design.carrier === 'electricity' || this.design.standbyPower > 0;
  }

  heat(): number {
    return this.capacity * this.temperature;
  }

  /** One explicit step. @param inlet - Water that comes for a volume of hot water. */
  step(taps: TapStep, ready: number, inlet: (hot: number) => number): HeaterStep {
    if (this.stored) return this.stepStore(taps, inlet);
    const { mains, volume, flow } = taps;
    const none = { hot: 0, outlet: mains, burner: 0, loss: 0, unfired: false };
    if (volume <= 0) return none;
    const instantaneous = this.design.kind.startsWith('instantaneous');
    const aimed = instantaneous && !this.out ? this.aims(ready, mains, flow) : ready;
    const share = hotShare(this.target, mains, aimed);
    const hot = volume * share;
    const cold = inlet(hot);
    const unfired = instantaneous && !(aimed > ready);
    if (!instantaneous || unfired || hot === 0) return { ...none, hot, outlet: cold, unfired };
    const most = (this.design.burnerPower * hot) / (flow * share);
    const burner = Math.min(Math.max(hot * WATER * (aimed - cold), 0), most);
    return { hot, outlet: cold + burner / (hot * WATER), burner, loss: 0, unfired };
  }

  /** Outlet that an instantaneous heater aims at. */
  private aims(inlet: number, mains: number, flow: number): number {
    const { burnerPower, minimumFlow, minimumPower, minimumRise, setTemperature } = this.design;
    const rate = WATER * flow;
    const share = hotShare(this.target, mains, setTemperature);
    const rise = setTemperature - inlet;
    if (rise <= 0 || rise < minimumRise) return inlet;
    const power = rate * share * rise;
    if (power < minimumPower || flow * share < minimumFlow) return inlet;
    if (power <= burnerPower) return setTemperature;
    const k = burnerPower / (rate * (this.target - mains));
    const weak = (inlet - k * mains) / (1 - k);
    return k < 1 && weak >= this.target ? weak : inlet + burnerPower / rate;
  }

  private stepStore({ mains, seconds, volume }: TapStep, inlet: (hot: number) => number): HeaterStep {
    const { burnerPower, lossCoefficient, roomTemperature, setTemperature } = this.design;
    const outlet = this.temperature;
    const hot = volume > 0 ? volume * hotShare(this.target, mains, outlet) : 0;
    const cold = volume > 0 ? inlet(hot) : mains;
    const loss = lossCoefficient * (outlet - roomTemperature) * seconds;
    const without = outlet + (hot * WATER * (cold - outlet) - loss) / this.capacity;
    const asked = Math.max(0, (setTemperature - without) * this.capacity);
    const burner = this.out ? 0 : Math.min(asked, burnerPower * seconds);
    this.temperature = without + burner / this.capacity;
    return { hot, outlet, burner, loss, unfired: false };
  }
}

/** Power that the house's own modules have to spare in a light, see docs/theory/backup.md. [W] */
export function sparePower({ heater, pv }: SystemDesign, light: number, air: number): number {
  const { sparePv } = heater;
  if (sparePv === null) return 0;
  const { area, maximumPowerCurrent, maximumPowerVoltage, nominalOperatingCellTemperature } = pv.module;
  const rated = area === null ? 0 : (maximumPowerCurrent * maximumPowerVoltage) / (1000 * area);
  const cell = air + ((nominalOperatingCellTemperature - 20) / 800) * light * (1 - rated / 0.9);
  const { houseLoad, peakPower, systemEfficiency, temperatureCoefficient } = sparePv;
  const power = peakPower * (light / 1000) * (1 + temperatureCoefficient * (cell - 25)) * systemEfficiency;
  return Math.max(power - houseLoad, 0);
}

/** Highest temperature that the taps can run at. */
export function atTaps({ draw }: SystemDesign, outlet: number): number {
  const controls = draw.mixingValve && outlet >= draw.valveTemperature + draw.valveMinimumDifference;
  return controls ? draw.valveTemperature + draw.valveAccuracy : outlet;
}

/** Cautions about the water that people touch and breathe. */
import { burnTime, recirculationLoss } from '@noonloop/sim-core/formulas';
import { burnWords } from '../words/burns.ts';
import { ofEachTank, waterIn } from './tank.ts';
import {
  celsius,
  countHours,
  cubicMetres,
  extreme,
  hours as hoursOf,
  joules,
  kelvin,
  metres,
  moment,
  type Rule,
  share,
  total,
} from './types.ts';

/** Tap limit where people wash. [°C] 120 °F, US Consumer Product Safety Commission, document 5098. */
const SCALD_LIMIT = 440 / 9;
/** Legionella multiplies between these. [°C] HSE ACoP L8 and HSG274. */
const LUKEWARM = [20, 45] as const;
/** Storage temperature that kills it. [°C] HSE HSG274 part 2. */
const DISINFECTION = 60;
/** Nine tenths die in so long there. [min] Laboratory figures repeated in an encyclopedia. */
const KILLING = 2;
/** Share of the heat asked for in an hour that may be missing before the hour counts as short. [-] Judgement: not felt. */
const SHORTFALL = 0.01;
/** Share of the year's heat from which a shortfall is worth a word. [-] Judgement. */
const SHORTFALL_OF_YEAR = 0.001;
/** Share of the hot water that may leave the heater below 60 °C before it is worth a word: the start of a draw. [-] Judgement. */
const COOL_WATER = 0.1;
/** Water into heaters and plastic pipe from which papers are to be read. [°C] Lowest permitted inlet commonly named, no source. */
const HOT_INLET = 60;
/** Plastic pipe. [°C] 180 °F, ASTM F876, from memory. */
const PLASTIC = 740 / 9;
/** Water that goes round. [J/(m³·K)] Near 50 °C, handbook value. */
const WATER = 988 * 4180;
/** Rounding of a degree of Fahrenheit to one of Celsius and back. [K] */
const ROUNDING = 0.05;

/** Taps above the limit while water is used: judged by what the valve lets through, not by what the taps want. @internal */
export const scald: Rule = ({ result: { design }, columns }) => {
  const drawn = (hour: number): boolean => columns.tapVolume[hour]! > 0;
  const count = countHours((hour) => drawn(hour) && columns.tapTemperature[hour]! > SCALD_LIMIT + ROUNDING);
  if (count === 0) return null;
  const hour = extreme(columns.tapTemperature, 1, drawn);
  const peak = columns.tapTemperature[hour]!;
  const { mixingValve, valveTemperature: setting, valveAccuracy, valveMinimumDifference } = design.draw;
  const uncontrolled = peak > setting + valveAccuracy + ROUNDING;
  const above = uncontrolled ? Math.max(valveAccuracy, valveMinimumDifference) : valveAccuracy;
  return {
    code: 'scald',
    severity: 'danger',
    facts: {
      hours: hoursOf(count),
      peak: celsius(peak),
      when: moment(hour),
      limit: celsius(SCALD_LIMIT),
      burns: burnWords(peak),
      burnTime: { value: burnTime(peak), unit: 's' },
      setting: celsius(setting),
      accuracy: kelvin(valveAccuracy),
      difference: kelvin(valveMinimumDifference),
      needed: celsius(setting + valveMinimumDifference),
      safe: celsius(SCALD_LIMIT - above),
    },
    finding: ['found'],
    advice: mixingValve ? ['burns', uncontrolled ? 'rise' : 'lower', 'measure'] : ['burns', 'none'],
  };
};

/** Lukewarm preheat tank. @internal */
export const lukewarm: Rule = ({ result, columns }) => {
  const { design } = result;
  const means = ofEachTank(result, 'tankMeanTemperature', 'meanTemperature');
  const count = countHours((hour) => means.some((mean) => mean[hour]! >= LUKEWARM[0] && mean[hour]! <= LUKEWARM[1]));
  if (count === 0) return null;
  const { kind } = design.heater;
  const says = inTank(kind) ? 'element' : isFlowThrough(kind) ? 'flowThrough' : 'stored';
  const unfired = total(columns.unfiredVolume);
  return {
    code: 'lukewarm-tank',
    severity: 'warning',
    facts: {
      hours: hoursOf(count),
      low: celsius(LUKEWARM[0]),
      high: celsius(LUKEWARM[1]),
      disinfection: celsius(DISINFECTION),
      killing: { value: KILLING, unit: 'min' },
      unfired: cubicMetres(unfired),
      cool: cubicMetres(total(columns.undisinfectedVolume)),
      whole: cubicMetres(total(columns.hotVolume)),
      stored: cubicMetres(waterIn(design.tank)),
    },
    finding: [
      means.length > 1 ? 'either' : 'found',
      ...(isFlowThrough(kind) && unfired > 0 ? (['unfired'] as const) : []),
    ],
    advice: [says],
  };
};

const inTank = (kind: string): boolean => kind === 'element' || kind === 'boiler-coil';
const isFlowThrough = (kind: string): boolean => kind.startsWith('instantaneous');

/** Heater too cool to disinfect. Without a mixing valve a higher setting scalds: the valve comes first. @internal */
export const heaterSetting: Rule = ({ result: { design } }) => {
  const setting = design.heater.setTemperature;
  if (setting >= DISINFECTION) return null;
  return {
    code: 'heater-setting',
    severity: setting < LUKEWARM[1] ? 'danger' : 'warning',
    facts: {
      setting: celsius(setting),
      disinfection: celsius(DISINFECTION),
      low: celsius(LUKEWARM[0]),
      high: celsius(LUKEWARM[1]),
      tap: celsius(SCALD_LIMIT),
    },
    finding: ['found'],
    advice: ['why', design.draw.mixingValve ? 'raise' : 'fitFirst'],
  };
};

/** Hot water that was not at 60 °C, though the store or element is set to it. @internal */
export const coolWater: Rule = ({ result: { design }, columns }) => {
  const { kind, setTemperature } = design.heater;
  const [cool, whole] = [total(columns.undisinfectedVolume), total(columns.hotVolume)];
  if (isFlowThrough(kind) || setTemperature < DISINFECTION || !(whole > 0) || cool < COOL_WATER * whole) return null;
  return {
    code: 'cool-water',
    severity: 'warning',
    facts: { volume: cubicMetres(cool), whole: cubicMetres(whole), disinfection: celsius(DISINFECTION) },
    finding: ['found'],
    advice: ['why', 'act'],
  };
};

/** Water drawn while season or timer keep the heater off. @internal */
export const heaterOff: Rule = ({ result: { design, notices } }) => {
  const notice = notices.find(({ code }) => code === 'heater-off');
  if (notice === undefined) return null;
  const { offDays } = design.heater;
  return {
    code: 'heater-off',
    severity: 'warning',
    facts: { ...notice.facts, hours: hoursOf(notice.hours), disinfection: celsius(DISINFECTION) },
    finding: ['found'],
    advice: offDays.length > 0 ? ['why', 'season'] : ['why', 'timer'],
  };
};

/** Water that comes back from a ring. [°C] HSE HSG274 part 2. */
const RING_RETURN = 50;
/** Water that may stand in a pipe to a tap. [m³] DVGW W 551, 3 L; from memory. */
const STANDING_WATER = 0.003;

/** Ring that comes back lukewarm, or rests. @internal */
export const ring: Rule = ({ result: { design } }) => {
  const { draw, heater } = design;
  if (draw.ring === null) return null;
  const { flow, hours, length, outerDiameter, surroundings } = draw.ring;
  const { returned } = recirculationLoss({
    ...draw.ring,
    pipeOuterDiameter: outerDiameter,
    capacityRate: flow * WATER,
    supply: heater.setTemperature,
    rest: 0,
  });
  const rests = hours.reduce((sum, [from, to]) => sum + to - from, 0) < 24;
  const cool = returned < RING_RETURN;
  if (!cool && !rests) return null;
  return {
    code: 'ring-lukewarm',
    severity: 'warning',
    facts: {
      supply: celsius(heater.setTemperature),
      returned: celsius(returned),
      limit: celsius(RING_RETURN),
      length: metres(length),
      surroundings: celsius(surroundings),
    },
    finding: cool ? (rests ? ['cool', 'rests'] : ['cool']) : ['rests'],
    advice: ['act'],
  };
};

/** Much water that stands between heater and taps. @internal */
export const longPipe: Rule = ({ result: { design } }) => {
  const { hotPipe } = design.draw;
  if (hotPipe === null) return null;
  const content = (Math.PI / 4) * hotPipe.innerDiameter ** 2 * hotPipe.length;
  if (content <= STANDING_WATER) return null;
  return {
    code: 'long-pipe',
    severity: 'warning',
    facts: { content: cubicMetres(content), limit: cubicMetres(STANDING_WATER), length: metres(hotPipe.length) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Taps colder than asked for. @internal */
export const shortfall: Rule = ({ result: { design }, columns }) => {
  const asked = columns.tapHeatAsked;
  const count = countHours((hour) => asked[hour]! - columns.tapHeat[hour]! > SHORTFALL * asked[hour]!);
  const missing = total(asked) - total(columns.tapHeat);
  if (count === 0 || missing < SHORTFALL_OF_YEAR * total(asked)) return null;
  const passes = total(columns.unfiredShortfall) > missing / 2;
  return {
    code: 'shortfall',
    severity: 'note',
    facts: { hours: hoursOf(count), missing: joules(missing), share: share(missing / total(asked)) },
    finding: ['found'],
    advice: [inTank(design.heater.kind) ? 'element' : passes ? 'least' : 'larger'],
  };
};

/** Hot water from the solar tank into what stands behind it. @internal */
export const hotInlet: Rule = ({ result: { design }, columns }) => {
  if (inTank(design.heater.kind)) return null;
  const drawn = (hour: number): boolean => columns.hotVolume[hour]! > 0;
  const count = countHours((hour) => drawn(hour) && columns.tankTopTemperature[hour]! > HOT_INLET);
  if (count === 0) return null;
  const peak = columns.tankTopTemperature[extreme(columns.tankTopTemperature, 1, drawn)]!;
  return {
    code: 'hot-inlet',
    severity: 'warning',
    facts: { hours: hoursOf(count), limit: celsius(HOT_INLET), peak: celsius(peak), plastic: celsius(PLASTIC) },
    finding: ['found'],
    advice: ['act'],
  };
};

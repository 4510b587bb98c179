/** Cautions about the water that people touch and breathe. */
import { formatHour } from '../calendar.ts';
import { countHours, extreme, hoursNumber, type Rule, temperatureNumber, total } from './types.ts';

/** Tap limit where people wash. [°C] US consumer and plumbing practice (120 °F). */
const SCALD_LIMIT = 49;
/** Legionella multiplies between these. [°C] HSE ACoP L8 and HSG274. */
const LUKEWARM = [20, 45] as const;
/** Storage temperature that kills it. [°C] HSE HSG274 part 2. */
const DISINFECTION = 60;
/** Share of the heat asked for in an hour that may be missing before the hour counts as short. [-] Judgement: not felt. */
const SHORTFALL = 0.01;

/** Share of the year's heat from which a shortfall is worth a word. [-] Judgement. */
const SHORTFALL_OF_YEAR = 0.001;

/** How long until a burn: Moritz & Henriques 1947, rounded to words. */
const burnTime = (temperature: number): string =>
  temperature >= 60 ? 'within seconds' : temperature >= 55 ? 'in under half a minute' : 'within minutes';

/** Taps above the limit while water is used. @internal */
export const scald: Rule = ({ result: { design }, columns, show, degrees }) => {
  const drawn = (hour: number): boolean => columns.tapVolume[hour]! > 0;
  const hours = countHours((hour) => drawn(hour) && columns.tapTemperature[hour]! > SCALD_LIMIT);
  if (hours === 0) return null;
  const hour = extreme(columns.tapTemperature, 1, drawn);
  const peak = columns.tapTemperature[hour]!;
  const remedy = design.draw.mixingValve
    ? `The mixing valve is set to ${degrees(design.draw.tapTemperature)}; set it to ${degrees(SCALD_LIMIT)} or lower where people wash.`
    : `There is no mixing valve; fit one after the heater, set to ${degrees(SCALD_LIMIT)} or lower where people wash.`;
  return {
    code: 'scald',
    severity: 'danger',
    numbers: [hoursNumber('Hours of use above the limit', hours), temperatureNumber('Hottest at the taps', peak)],
    source: 'Moritz & Henriques 1947, read in secondary pages; limit: US plumbing practice',
    finding: `Water at the taps is above ${degrees(SCALD_LIMIT)} in ${show(hours, 'wholeHours')} of use and reaches ${degrees(peak)} (${formatHour(hour)}).`,
    advice: `Water that hot burns skin ${burnTime(peak)}, that of children and the elderly sooner. ${remedy} Follow the local code; many ask for less in care homes and for children.`,
  };
};

/** Lukewarm preheat tank. @internal */
export const lukewarm: Rule = ({ result: { design }, columns, show, degrees }) => {
  const mean = columns.tankMeanTemperature;
  const hours = countHours((hour) => mean[hour]! >= LUKEWARM[0] && mean[hour]! <= LUKEWARM[1]);
  if (hours === 0) return null;
  return {
    code: 'lukewarm-tank',
    severity: 'warning',
    numbers: [hoursNumber('Hours with a lukewarm tank', hours)],
    source: 'HSE ACoP L8 and HSG274 part 2, read in secondary pages',
    finding: `The mean of the solar tank is between ${degrees(LUKEWARM[0])} and ${degrees(LUKEWARM[1])}, where legionella multiplies, in ${show(hours, 'wholeHours')}.`,
    advice:
      design.heater.kind === 'element'
        ? `Solar heat alone is no disinfection, and the element heats only what stands above it: bring the whole tank to ${degrees(DISINFECTION)} as often as the local code says.`
        : `That is usual for a preheat tank, and solar heat alone is no disinfection: the heater after it must bring all drawn water to ${degrees(DISINFECTION)}, or do what the local code says.`,
  };
};

/** Heater too cool to disinfect. @internal */
export const heaterSetting: Rule = ({ result: { design }, degrees }) => {
  const setting = design.heater.setTemperature;
  if (setting >= DISINFECTION) return null;
  return {
    code: 'heater-setting',
    severity: 'danger',
    numbers: [temperatureNumber('Thermostat', setting)],
    source: 'HSE HSG274 part 2, read in secondary pages',
    finding: `The heater is set to ${degrees(setting)}.`,
    advice: `Water kept or passed on below ${degrees(DISINFECTION)} does not reliably kill legionella: set it to ${degrees(DISINFECTION)} and mix down at the taps, or do what the local code says.`,
  };
};

/** Taps colder than asked for. @internal */
export const shortfall: Rule = ({ columns, show }) => {
  const asked = columns.tapHeatAsked;
  const hours = countHours((hour) => asked[hour]! - columns.tapHeat[hour]! > SHORTFALL * asked[hour]!);
  const missing = total(asked) - total(columns.tapHeat);
  if (hours === 0 || missing < SHORTFALL_OF_YEAR * total(asked)) return null;
  return {
    code: 'shortfall',
    severity: 'note',
    numbers: [hoursNumber('Hours with cooler taps', hours), { label: 'Heat missing', value: missing, kind: 'energy' }],
    source: 'An hour counts when more than 1 % of the heat asked for is missing (judgement)',
    finding: `The taps get less heat than asked for in ${show(hours, 'wholeHours')}: ${show(missing, 'energy')} in the year, ${show(missing / total(asked), 'fraction')}.`,
    advice: `A larger heater or burner helps. Follow the local code, which may set a least temperature at the outlets.`,
  };
};

/** The note about cold water that is computed by a correlation of another country. */
import { celsius, extreme, kelvin, type Rule } from './types.ts';

/** The contiguous United States, as a box: what is near its borders is near its water too. [°] */
const CONTIGUOUS = { latitude: [24, 50], longitude: [-125, -66] } as const;

/** How far the correlation is off at a London tap, in winter and summer; docs/theory/measured.md. [K] */
const LONDON_OFF = [4, 3] as const;

/** The correlation of the mains outside the country that it was fitted to. @internal */
export const mainsElsewhere: Rule = ({ result: { design, site }, columns }) => {
  const within = (value: number, [low, high]: readonly [number, number]): boolean => value >= low && value <= high;
  const { latitude, longitude } = CONTIGUOUS;
  if (design.draw.mains !== 'from-weather') return null;
  if (within(site.latitude, latitude) && within(site.longitude, longitude)) return null;
  const at = (sign: 1 | -1) => celsius(columns.mainsTemperature[extreme(columns.mainsTemperature, sign)]!);
  return {
    code: 'mains-elsewhere',
    severity: 'note',
    facts: { coldest: at(-1), warmest: at(1), winter: kelvin(LONDON_OFF[0]), summer: kelvin(LONDON_OFF[1]) },
    finding: ['found'],
    advice: ['why', 'act'],
  };
};

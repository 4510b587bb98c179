/** The best start in words: lines of the working, and what to do. */
import { line, show, type WorkingStep } from '../../input/working.ts';
import type { BestPumpStart, PumpStart } from './pump-start.ts';
import { KWH } from './working.ts';

/** Share of the year's heat from which a better start, or a controller, is worth a word; judgement. [-] */
const WORTH_A_WORD = 0.01;

const heat = (joule: number): string => `${(joule / KWH).toFixed(0)} kWh`;
const light = ({ irradiance }: PumpStart): string =>
  irradiance === null ? 'no light' : `${irradiance.toFixed(0)} W/m²`;

/** Lines of the working. */
export function startSteps({ asDesigned, best, lossAtHalf, lossAtTwice, rows }: BestPumpStart): WorkingStep[] {
  const tried = rows.map((row) => `${light(row)} ${heat(row.delivered)}`).join(', ');
  const sides = [
    lossAtHalf === null ? null : `with half that light ${heat(lossAtHalf)} less`,
    lossAtTwice === null ? null : `with twice that light ${heat(lossAtTwice)} less`,
  ].filter((side) => side !== null);
  return [
    line(
      'start that delivers most',
      'the year with each start',
      `${tried}; as designed ${light(asDesigned)} ${heat(asDesigned.delivered)}`,
      [best.irradiance ?? 0, 'W/m²'],
      ['simulation of this roof', ...sides].join('; '),
    ),
  ];
}

/** What to do. */
export function startNotes({ asDesigned, best, by, withController }: BestPumpStart): string[] {
  const notes: string[] = [];
  const gain = best.delivered - asDesigned.delivered;
  if (gain > WORTH_A_WORD * asDesigned.delivered) {
    const how =
      by === 'threshold' && best.startPower !== null
        ? `a threshold of ${show(best.startPower, 2)} W`
        : `a module of ${show(best.modulePower, 2)} W`;
    notes.push(
      `A start in ${light(best)} instead of ${light(asDesigned)}, by ${how}, delivers ${heat(gain)} more in this year, and the coil takes ${heat(best.heatGivenBack)} instead of ${heat(asDesigned.heatGivenBack)} back out of the tank.`,
    );
  }
  const beyond = withController.delivered - best.delivered;
  if (beyond > WORTH_A_WORD * best.delivered) {
    notes.push(
      `A controller by temperature difference delivers ${heat(beyond)} more than the best start: the pump then never runs while the tank is the warmer.`,
    );
  }
  return notes;
}

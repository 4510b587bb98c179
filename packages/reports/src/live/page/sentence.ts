/** The system's line; each value in it leads to its knob. */
import type { TurnReply } from '../types.ts';
import { find, glued, make } from './dom.ts';

const KNOB_OF = {
  panels: 'array.panels',
  area: 'array.collector.area',
  tilt: 'array.tilt',
  facing: 'array.azimuth',
  tank: 'tank.volume',
  water: 'draw.dailyVolume',
  glycol: 'loop.glycolMassFraction',
  heater: 'heater.kind',
} as const;

/** Writes the line. @param lead - takes the keyboard to a knob */
export function sentence({ parts }: TurnReply, lead: (knob: string) => void): void {
  const end = (index: number): string => (index === parts.length - 1 ? '.' : index === 0 ? ' ' : ', ');
  find('#sentence').replaceChildren(
    ...parts.flatMap(({ part, words }, index) => [
      make('button', { type: 'button', class: 'value', click: () => lead(KNOB_OF[part]) }, glued(words)),
      end(index),
    ]),
  );
}

/** What gauges by themselves find in the real log of the house: planted faults, and the log as it is. For docs/theory/measured.md. */
import { checkGauges } from '@noonloop/sim-core';
import { medianOf } from '../../packages/sim-core/src/advice/gauges/changes.ts';
import { daysOf } from '../../packages/sim-core/src/advice/gauges/days.ts';
import { quietDecay, RISE, WARM } from '../../packages/sim-core/src/advice/gauges/nights.ts';
import { seriesOf } from '../../packages/sim-core/src/advice/gauges/series.ts';
import {
  besideIn,
  foundIn,
  gaugeTrials,
  houseNights,
  PROOF,
  plainWindows,
} from '../validation/measured/gauge-trials.ts';
import { houseGauges, PLANTED } from '../validation/measured/planted.ts';
import { quantile } from '../validation/measured/sets.ts';
import { table } from './page-tables.ts';

const NAMES = {
  'night-circulation': 'tank feeds the collectors at night',
  'no-flow': 'pump runs and moves nothing',
} as const;

/** Nights that only the warming in the dark tells: whether the tank cools faster on them, which the sign does not look at. */
export function riseAlone(): string {
  const days = daysOf(seriesOf(houseGauges()), Number.POSITIVE_INFINITY);
  const alone = days.nightRise.map((rise, day) => Number(rise >= RISE && !(days.warmNight[day]! >= WARM)));
  const rates = days.decay.filter((rate, day) => alone[day] === 1 && !Number.isNaN(rate));
  const [own, quiet] = [rates, quietDecay(days)].map((some) => (100 * medianOf(some)).toFixed(1));
  const count = alone.reduce((sum, one) => sum + one, 0);
  return `${count} of the flagged nights show by the warming in the dark alone. On ${rates.length} of them the tank's cooling can be read: ${own} % an hour, on quiet nights ${quiet} %.`;
}

/** Rates of the proof, and what the log shows by itself. */
export function gaugesTable(): string {
  const trials = gaugeTrials(PROOF.seed, PROOF.first);
  const rows = PLANTED.map(({ name }) => {
    const own = trials.filter(({ planted }) => planted.name === name);
    const told = own.map(foundIn).filter((one) => one !== null);
    const beside = own.filter((trial) => besideIn(trial).length > 0);
    return [name, told.length, told.filter((one) => one).length, own.length - told.length, beside.length];
  });
  const windows = plainWindows(PROOF.first);
  const alarms = new Map<string, number>();
  for (const { findings } of windows) for (const { fault } of findings) alarms.set(fault, (alarms.get(fault) ?? 0) + 1);
  const said = [...alarms].map(([fault, count]) => `${NAMES[fault as keyof typeof NAMES] ?? fault} in ${count}`);
  const nights = houseNights();
  const of = (warm: boolean) => nights.filter(({ collector }) => collector > 30 === warm);
  const fall = (warm: boolean) =>
    (
      100 *
      quantile(
        of(warm).map(({ rate }) => rate),
        0.5,
      )
    ).toFixed(1);
  const flagged = checkGauges(houseGauges()).findings.find(({ fault }) => fault === 'night-circulation')!;
  return [
    table(
      ['planted into the log', 'windows', 'found', 'left out: there already', 'windows in which another was named too'],
      rows,
    ),
    '',
    `The log as it is, ${windows.length} windows of 42 days: ${said.join(', ')}; nothing else.`,
    `Over the year the check flags ${flagged.days} nights of ${flagged.of}. On ${of(true).length} nights the collector stayed above 30 °C from 2 to 5 h.`,
    `On those the tank's mean fell by ${fall(true)} % an hour of what it was over the room, on the others by ${fall(false)} %.`,
    riseAlone(),
  ].join('\n');
}

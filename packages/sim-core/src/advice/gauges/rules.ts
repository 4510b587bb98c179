// What each fault looks like on the gauges alone.
import type { GaugeKey } from '@noonloop/weather-io';
import { fact, type Saying, say } from '../../input/saying.ts';
import { type Change, changeOf, medianOf } from './changes.ts';
import type { Days } from './days.ts';
import { fedBy, quietDecay, RISE, WARM } from './nights.ts';
import type { Series } from './series.ts';
import type { GaugeEvidenceCode, GaugeFault, GaugeFinding } from './types.ts';

/** What papers say; `null` where they say nothing. */
export interface Papers {
  /** Start difference of the controller. [K] */
  readonly start: number | null;
  /** Loss of the tank over its heat capacity. [1/h] */
  readonly decay: number | null;
}

/** Nights on which that must be, and their share. Judgement. */
const LEAST_NIGHTS = 3;
const LEAST_SHARE = 0.1;
/** Time a day, and days, from which a pump that stands or moves nothing is named. Judgement. [h] */
const LONG_STANDING = 0.5;
const LONG_IDLE = 0.75;
const LONG_INVERTED = 6;
const LEAST_DAYS = 2;
const LEAST_DAYS_SHARE = 0.03;
const MOSTLY = 0.15;
/** Kelvin by which starts and stops must both move, or starts lie off their setting: sensors are good to 1 or 2 K. Judgement. [K] */
const APART = 3;
/** Share to which the heat carried must fall; a dull month costs less. Judgement. */
const LESS = 0.75;
/** Factor by which a tank must cool faster. Judgement. */
const FASTER = 1.6;
/** A collector does not stand still for so long, nor jump so far and back. Judgement. [h], [K] */
const STUCK_COLLECTOR = 30;
const STUCK_TANK = 48;
const JUMP = 40;
const LEAST_JUMPS = 3;

interface Found {
  readonly fault: GaugeFault;
  readonly evidence: Saying<GaugeEvidenceCode>;
  readonly days: number;
  readonly of: number;
  readonly since?: number | null;
  readonly gauge?: GaugeKey;
}
const found = ({ since = null, gauge, ...rest }: Found): GaugeFinding[] => [{ ...rest, since, gauge: gauge ?? null }];

/** All that the gauges show, in the order in which one looks after it. */
export function findingsOf(series: Series, days: Days, papers: Papers): GaugeFinding[] {
  // Warm water lies on cold: a bottom over the top is a gauge that is off, or two that are swapped.
  const upsideDown = { fault: 'sensor-dead', code: 'upside-down', gauge: 'tankBottomTemperature' } as const;
  const dead = [...stuck(series), ...jumps(series), ...onDays(days, days.inverted, [LONG_INVERTED, 0], upsideDown)];
  // What a dead gauge makes of the rest is nothing that was found.
  if (dead.length > 0) return dead;
  const stands = [
    ...onDays(days, days.standing, [LONG_STANDING, LEAST_DAYS_SHARE], {
      fault: 'pump-stands',
      code: 'hot-while-standing',
    }),
    ...onDays(days, days.idle, [LONG_IDLE, 0], { fault: 'no-flow', code: 'runs-without-gain' }),
  ];
  // A loop that mostly stands has no starts and carries nothing; a gauge that is off moves every difference.
  const mostly = stands.some((one) => one.days >= MOSTLY * one.of);
  const apart = mostly ? [] : startsAndStops(days, papers);
  const carries = mostly || apart.length > 0 ? [] : carriesLess(days);
  return [...stands, ...warmNights(days), ...apart, ...carries, ...(mostly ? [] : tankLoss(days, papers))];
}

/** Days of a column that are past a limit, those that have a value at all, and the first. */
function past(days: Days, column: Float64Array, limit: number) {
  let [over, of, first] = [0, 0, Number.NaN];
  column.forEach((value, day) => {
    if (Number.isNaN(value)) return;
    of++;
    if (value < limit) return;
    over++;
    if (Number.isNaN(first)) first = days.hour[day]!;
  });
  return { over, of, since: of > 0 && first > days.hour[0]! + 24 ? first : null };
}

/** A fault that shows on some days past a limit. @param least - Share of the days below which it is none; two days in any case. */
function onDays(
  days: Days,
  column: Float64Array,
  [limit, least]: readonly [limit: number, least: number],
  {
    code,
    ...what
  }: Pick<Found, 'fault' | 'gauge'> & { code: 'hot-while-standing' | 'runs-without-gain' | 'upside-down' },
): GaugeFinding[] {
  const { over, of, since } = past(days, column, limit);
  if (over < Math.max(LEAST_DAYS, least * of)) return [];
  return found({ ...what, evidence: say(code, { days: fact(over, 'days') } as const), days: over, of, since });
}

function warmNights(days: Days): GaugeFinding[] {
  const fed = past(days, fedBy(days), 0);
  if (fed.over < Math.max(LEAST_NIGHTS, LEAST_SHARE * fed.of)) return [];
  // Said is the sign that shows on more nights.
  const [warm, rise] = [past(days, days.warmNight, WARM), past(days, days.nightRise, RISE)];
  const [column, limit, seen, code] =
    rise.over > warm.over
      ? ([days.nightRise, RISE, rise, 'warms-in-the-dark'] as const)
      : ([days.warmNight, WARM, warm, 'warm-at-night'] as const);
  const middle = medianOf(column.filter((value) => value >= limit));
  return found({
    fault: 'night-circulation',
    evidence: say(code, { nights: fact(seen.over, '1'), of: fact(seen.of, '1'), warm: fact(middle, 'K') }),
    days: fed.over,
    of: fed.of,
    since: fed.since,
  });
}

function startsAndStops(days: Days, { start }: Papers): GaugeFinding[] {
  const [first, last] = [changeOf(days.start), changeOf(days.stop)];
  if (first !== null && last !== null) {
    const [a, b] = [first.after - first.before, last.after - last.before];
    if (Math.min(Math.abs(a), Math.abs(b)) >= APART && a * b > 0)
      return found({
        fault: 'sensor-apart',
        evidence: say('starts-and-stops-moved', { start: fact(Math.abs(a), 'K'), stop: fact(Math.abs(b), 'K') }),
        days: first.counts[1],
        of: first.counts[0] + first.counts[1],
        since: days.hour[first.at]!,
      });
  }
  const starts = days.start.filter((value) => !Number.isNaN(value));
  const usual = medianOf(starts);
  // A log by minutes may see a start late; early it cannot.
  if (start !== null && starts.length >= 5 && (usual < start - APART || usual > start + 3 * APART))
    return found({
      fault: 'sensor-apart',
      evidence: say('starts-off-setting', { found: fact(usual, 'K'), setting: fact(start, 'K') }),
      days: starts.length,
      of: starts.length,
    });
  return [];
}

const changed = (fault: GaugeFault, code: GaugeEvidenceCode, days: Days, change: Change, unit: string) =>
  found({
    fault,
    evidence: say(code, { before: fact(change.before, unit), after: fact(change.after, unit) }),
    days: change.counts[1],
    of: change.counts[0] + change.counts[1],
    since: days.hour[change.at]!,
  });

function carriesLess(days: Days): GaugeFinding[] {
  // Water drawn and dull days hide what a loop can carry: the better of two days counts.
  const better = days.carried.map((value, day) =>
    day % 2 === 0 ? Number.NaN : Math.max(...[days.carried[day - 1]!, value].filter((one) => !Number.isNaN(one)), -1),
  );
  const change = changeOf(better.map((value) => (value < 0 ? Number.NaN : value)));
  if (change === null || !(change.after <= LESS * change.before)) return [];
  return found({
    fault: 'weak-transfer',
    evidence: say('carries-less', { left: fact(Math.max(0, change.after / change.before), '-') }),
    days: change.counts[1],
    of: change.counts[0] + change.counts[1],
    since: days.hour[change.at]!,
  });
}

function tankLoss(days: Days, papers: Papers): GaugeFinding[] {
  const quiet = quietDecay(days);
  const change = changeOf(quiet);
  if (change !== null && change.after >= FASTER * change.before) {
    const hours = { ...change, before: 1 / change.before, after: 1 / change.after };
    return changed('tank-loss', 'nights-cool-faster', days, hours, 'h');
  }
  const nights = quiet.filter((value) => !Number.isNaN(value));
  const usual = medianOf(nights);
  if (papers.decay === null || nights.length < 5 || !(usual >= FASTER * papers.decay)) return [];
  return found({
    fault: 'tank-loss',
    evidence: say('loses-more-than-stated', { times: fact(usual / papers.decay, '1') }),
    days: nights.length,
    of: nights.length,
  });
}

const NAMED = [
  ['collector', 'collectorTemperature', STUCK_COLLECTOR],
  ['bottom', 'tankBottomTemperature', STUCK_TANK],
  ['top', 'tankTopTemperature', STUCK_TANK],
] as const;

/** A gauge that shows the same for longer than any sensor in use does. */
function stuck({ hour, has, ...columns }: Series): GaugeFinding[] {
  return NAMED.flatMap(([name, gauge, limit]) => {
    if (!has(gauge)) return [];
    const values = columns[name];
    let [longest, since, begun] = [0, 0, 0];
    values.forEach((value, at) => {
      if (Math.abs(value - values[begun]!) > 0.05 || Number.isNaN(values[begun]!)) begun = at;
      else if (hour[at]! - hour[begun]! > longest) [longest, since] = [hour[at]! - hour[begun]!, hour[begun]!];
    });
    if (longest < limit) return [];
    const days = Math.max(1, Math.round(longest / 24));
    const evidence = say('stuck', { gauge, hours: fact(longest, 'h') } as const);
    return found({ fault: 'sensor-dead', evidence, days, of: days, since, gauge });
  });
}

/** A gauge that leaps and comes back, as a loose wire does. */
function jumps({ hour, has, ...columns }: Series): GaugeFinding[] {
  return NAMED.flatMap(([name, gauge]) => {
    if (!has(gauge)) return [];
    const values = columns[name];
    const at = values.reduce<number[]>((list, value, k) => {
      const [before, after] = [values[k - 1]!, values[k + 1]!];
      const near = hour[k + 1]! - hour[k - 1]! < 0.6 && Math.abs(after - before) < JUMP / 2;
      if (near && Math.min(Math.abs(value - before), Math.abs(value - after)) > JUMP) list.push(k);
      return list;
    }, []);
    if (at.length < LEAST_JUMPS) return [];
    const days = new Set(at.map((k) => Math.floor(hour[k]! / 24))).size;
    const evidence = say('jumps', { gauge, count: fact(at.length, '1') } as const);
    return found({ fault: 'sensor-dead', evidence, days, of: days, since: hour[at[0]!]!, gauge });
  });
}

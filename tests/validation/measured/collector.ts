/**
 * Flat plates of the Plataforma Solar de Almería (CIEMAT): SolarMED, Apache-2.0, copyright Juan Miguel Serrano Rodríguez. A loop has
 * 14 collectors of 10.1 m² with water (from memory). The loops' own inlets read below the header's, and their heat comes out a third above what the
 * exchanger takes, η0 with it: slopes and foretelling are judged, η0 is not. Fitted: 28 and 29 June 2023. Foretold: 31 March and 30 June.
 */
import { beamIncidenceModifier, fluidProperties, incidenceCosine } from '@noonloop/sim-core/formulas';
import { sunPosition } from '@noonloop/weather-io/sun';
import { solve } from '../../../packages/sim-core/src/advice/survey/least-squares.ts';
import { mean, measuredRows, type Pairs, quantile } from './sets.ts';

export const COLLECTOR_FILE = 'psa/20230630-10s.csv';
const FITTED = ['psa/20230628-400s.csv', 'psa/20230629-400s.csv'];
const MARCH = 'psa/20230331-400s.csv';
const AREA = 14 * 10.1;
/** The fourth gives a quarter less than the others. */
const LOOPS = [2, 3, 4];

/** The default of a design and not fitted; diffuse light counts as in a test, 15 % at the modifier of 60°. */
const MODIFIER = { b0: 0.1 };
const DIFFUSE = 0.15;
const SITE = { latitude: 37.09, longitude: -2.36 };
const PLANE = { tilt: 35, azimuth: 180 };

/** What of the light on the plane counts. [-] */
function modifierAt(time: number): number {
  const sun = sunPosition({ ...SITE, time: time * 1000 });
  const cosine = Math.max(incidenceCosine(PLANE, sun), 0.02);
  const beam = beamIncidenceModifier(MODIFIER, (Math.acos(cosine) * 180) / Math.PI);
  return (1 - DIFFUSE) * beam + DIFFUSE * beamIncidenceModifier(MODIFIER, 60);
}

/** One moment, mean of three loops. */
interface Moment {
  /** [s] */
  readonly time: number;
  /** On the plane, after the incidence modifier. [W/m²] */
  readonly light: number;
  readonly air: number;
  readonly inlet: number;
  readonly outlet: number;
  /** ρ c_p V̇ over the area. [W/(m²·K)] */
  readonly rate: number;
  /** Whether the heat goes to the store: loops at rest repeat their last readings. */
  readonly runs: boolean;
}

function moments(path: string): Moment[] {
  return measuredRows(path).map((row) => {
    const of = (name: string) => mean(LOOPS.map((loop) => Number(row[`${name}_l${loop}`])));
    const [inlet, outlet, flow] = [of('Tsf_in'), of('Tsf_out'), of('qsf')];
    const water = fluidProperties({ fluid: 'water', temperature: (inlet + outlet) / 2 });
    const time = Date.parse(row.time_utc!) / 1000;
    return {
      time,
      light: Number(row.I) * modifierAt(time),
      air: Number(row.Tamb),
      inlet,
      outlet,
      rate: (water.density * water.specificHeat * Math.max(flow, 0)) / 3600 / AREA,
      runs: Number(row.qts_src) > 2,
    };
  });
}

/** η0, a1 and heat capacity of the ISO 9806 form; a2 cannot be told from a1 in readings 40 to 70 K above the air, and is left 0. */
export interface FittedCollector {
  readonly eta0: number;
  /** [W/(m²·K)] */
  readonly a1: number;
  /** [J/(m²·K)] */
  readonly heatCapacity: number;
}

interface Point {
  readonly flux: number;
  readonly light: number;
  readonly excess: number;
  readonly rise: number;
}

/** Rows with the heat going to the store on both sides, and the rise of the mean over them. */
function points(list: readonly Moment[]): Point[] {
  return list.slice(1, -1).flatMap((now, at) => {
    const [before, after] = [list[at]!, list[at + 2]!];
    if (!(before.runs && now.runs && after.runs)) return [];
    const middle = ({ inlet, outlet }: Moment) => (inlet + outlet) / 2;
    return [
      {
        flux: now.rate * (now.outlet - now.inlet),
        light: now.light,
        excess: middle(now) - now.air,
        rise: (middle(after) - middle(before)) / (after.time - before.time),
      },
    ];
  });
}

let fitted: FittedCollector | undefined;
/** The fit, made once. */
export function fitCollector(): FittedCollector {
  fitted ??= fitOnce();
  return fitted;
}

function fitOnce(): FittedCollector {
  const rows = FITTED.flatMap((path) => points(moments(path)));
  const columns = rows.map(({ light, excess, rise }) => [light, -excess, -rise]);
  const normal = [0, 1, 2].map((i) => [0, 1, 2].map((j) => columns.reduce((sum, row) => sum + row[i]! * row[j]!, 0)));
  const right = [0, 1, 2].map((i) => columns.reduce((sum, row, at) => sum + row[i]! * rows[at]!.flux, 0));
  const [eta0, a1, heatCapacity] = solve(normal, right)! as [number, number, number];
  return { eta0, a1, heatCapacity };
}

/** Heat of single rows of a day that was not fitted, by the formula with its heat capacity. [W/m²] */
export function formulaPairs(fit: FittedCollector, path = MARCH): Pairs {
  const rows = points(moments(path));
  return {
    measured: rows.map(({ flux }) => flux),
    modelled: rows.map(({ light, excess, rise }) => fit.eta0 * light - fit.a1 * excess - fit.heatCapacity * rise),
  };
}

/** Factor on the logged light under which the fit gives what a day measured in the mean. [-] */
export function lightFactor(fit: FittedCollector, path = MARCH): number {
  const rows = points(moments(path));
  const taken = rows.map(({ flux, excess, rise }) => flux + fit.a1 * excess + fit.heatCapacity * rise);
  return mean(taken) / mean(rows.map(({ light }) => fit.eta0 * light));
}

/** Heat of the whole field between its headers, row by row. */
function headerMoments(path: string): Moment[] {
  const loops = moments(path);
  return measuredRows(path).map((row, at) => {
    const [inlet, outlet, flow] = [Number(row.Tsf_in), Number(row.Tsf_out), Number(row.qsf)];
    const water = fluidProperties({ fluid: 'water', temperature: (inlet + outlet) / 2 });
    const rate = (water.density * water.specificHeat * Math.max(flow, 0)) / 3600 / (ALL_LOOPS * AREA);
    return { ...loops[at]!, inlet, outlet, rate };
  });
}

/** Loops of the field. */
const ALL_LOOPS = 4;

/** What the headers say instead of the loops. */
export interface HeaderCheck {
  /** Fitted on 28 and 29 June, without heat capacity: the headers mix four loops. [-] */
  readonly eta0: number;
  /** [W/(m²·K)] */
  readonly a1: number;
  /** 31 March by that fit. [W/m²] */
  readonly march: Pairs;
  /** Heat of the four loops over that of the headers, June days and 31 March. [-] */
  readonly loopsOverHeader: readonly [june: number, march: number];
  /** Heat behind the exchanger over that before it, June days. [-] */
  readonly acrossExchanger: number;
}

export function headerCheck(): HeaderCheck {
  const rows = FITTED.flatMap((path) => points(headerMoments(path)));
  const columns = rows.map(({ light, excess }) => [light, -excess]);
  const normal = [0, 1].map((i) => [0, 1].map((j) => columns.reduce((sum, row) => sum + row[i]! * row[j]!, 0)));
  const right = [0, 1].map((i) => columns.reduce((sum, row, at) => sum + row[i]! * rows[at]!.flux, 0));
  const [eta0, a1] = solve(normal, right)! as [number, number];
  const march = points(headerMoments(MARCH));
  const heat = (paths: readonly string[], of: (row: Record<string, string>) => number): number =>
    paths
      .flatMap((path) => measuredRows(path).filter((row) => Number(row.qts_src) > 4))
      .reduce((sum, row) => sum + of(row), 0);
  const difference = (row: Record<string, string>, flow: string, hot: string, cold: string): number =>
    Number(row[flow]) * (Number(row[hot]) - Number(row[cold]));
  const loops = (row: Record<string, string>) =>
    [2, 3, 4, 5].reduce((sum, k) => sum + difference(row, `qsf_l${k}`, `Tsf_out_l${k}`, `Tsf_in_l${k}`), 0);
  const header = (row: Record<string, string>) => difference(row, 'qsf', 'Tsf_out', 'Tsf_in');
  const ratio = (paths: readonly string[]) => heat(paths, loops) / heat(paths, header);
  return {
    eta0,
    a1,
    march: {
      measured: march.map(({ flux }) => flux),
      modelled: march.map(({ light, excess }) => eta0 * light - a1 * excess),
    },
    loopsOverHeader: [ratio(FITTED), ratio([MARCH])],
    acrossExchanger: heat(FITTED, (row) => difference(row, 'qts_src', 'Thx_s_out', 'Thx_s_in')) / heat(FITTED, header),
  };
}

/** Nodes along the flow: 14 collectors in a loop. */
const NODES = 14;
/** Light of ten minutes that keeps within so much of its mean is steady. [-] */
const STEADY = 0.03;

/** One minute of the day foretold. */
export interface Minute {
  /** From midnight UTC. [h] */
  readonly hour: number;
  readonly light: number;
  readonly measured: number;
  readonly modelled: number;
  /** Heat, measured and modelled. [W/m²] */
  readonly flux: readonly [number, number];
  readonly steady: boolean;
}

/** The outlet of 30 June minute by minute: nodes in a row, each by the ISO form with its share of the capacity, from inlet, flow, light and air. */
export function foretellOutlet(fit: FittedCollector): Minute[] {
  const list = moments(COLLECTOR_FILE);
  const first = list.findIndex(({ runs }) => runs);
  const last = list.findLastIndex(({ runs }) => runs);
  const nodes = new Float64Array(NODES);
  for (let node = 0; node < NODES; node++) {
    const { inlet, outlet } = list[first]!;
    nodes[node] = inlet + ((node + 1) / NODES) * (outlet - inlet);
  }
  const rows = list.slice(first + 1, last + 1).map((now, at) => {
    const duration = now.time - list[first + at]!.time;
    let before = now.inlet;
    for (let node = 0; node < NODES; node++) {
      // C dT/dt = N k (T_in − T) + η0 G − a1 ((T_in + T)/2 − T_a), exact for a constant inlet of the node.
      const slope = NODES * now.rate + fit.a1 / 2;
      const rest = (NODES * now.rate - fit.a1 / 2) * before + fit.eta0 * now.light + fit.a1 * now.air;
      const end = rest / slope;
      nodes[node] = end + (nodes[node]! - end) * Math.exp((-slope * duration) / fit.heatCapacity);
      before = nodes[node]!;
    }
    return { ...now, modelled: before };
  });
  return minutesOf(rows);
}

function minutesOf(rows: readonly (Moment & { modelled: number })[]): Minute[] {
  const minutes: Minute[] = [];
  for (let at = 0; at + 6 <= rows.length; at += 6) {
    const part = rows.slice(at, at + 6);
    if (!part.every(({ runs }) => runs)) continue;
    const around = rows.slice(Math.max(at - 30, 0), at + 36).map(({ light }) => light);
    const middle = mean(around);
    minutes.push({
      hour: (part[0]!.time % 86_400) / 3600,
      light: mean(part.map(({ light }) => light)),
      measured: mean(part.map(({ outlet }) => outlet)),
      modelled: mean(part.map(({ modelled }) => modelled)),
      flux: [
        mean(part.map(({ rate, inlet, outlet }) => rate * (outlet - inlet))),
        mean(part.map(({ rate, inlet, modelled }) => rate * (modelled - inlet))),
      ],
      steady: quantile(around, 1) - quantile(around, 0) < 2 * STEADY * middle,
    });
  }
  // The first quarter of an hour still knows what the nodes were started with.
  return minutes.slice(15);
}

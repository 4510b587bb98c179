/** The year's heat from sun and fuel to the taps as a graph whose flows add up at every node. */
import type { Summary } from '../summary.ts';
import type { ColourRole } from './palette.ts';

/** A place where heat arrives, ends or starts. */
export interface FlowNode {
  readonly id: string;
  readonly label: string;
  /** Column of the picture, 0 for the sun. */
  readonly stage: number;
  /** What passes through it. [J] */
  readonly value: number;
  readonly role: ColourRole;
}

/** Heat from one place to another. */
interface FlowLink {
  readonly from: string;
  readonly to: string;
  /** [J] */
  readonly value: number;
  readonly role: ColourRole;
}

/** Nodes by stage, the main stream first, and links between them. */
export interface FlowGraph {
  readonly nodes: readonly FlowNode[];
  readonly links: readonly FlowLink[];
}

/** Flows smaller than this share of the largest are rounding, not heat. [-] */
const ROUNDING = 1e-9;

/**
 * Graph of one year. What a part stores from the year's start to its end closes the sums: it leaves as "stored", or enters as
 * "from store".
 *
 * @returns `null` where a flow runs backwards over the year, which no such picture can show
 */
export function flowGraph({ year, design }: Summary): FlowGraph | null {
  const forwards = [
    year.irradiation,
    year.collectorHeat,
    year.collectorLoss,
    year.pipeLoss,
    year.coilHeat,
    year.deliveredEnergy,
    year.tankLoss,
    year.reliefHeat,
    year.heaterFuel,
    year.heaterHeat,
    year.heaterLoss,
    year.tapHeat,
  ];
  const smallest = Math.max(...forwards) * ROUNDING;
  if (smallest === 0 || forwards.some((value) => value < -smallest)) return null;
  const nodes: FlowNode[] = [];
  const links: FlowLink[] = [];
  const place = (id: string, label: string, stage: number, value: number, role: ColourRole): void => {
    if (value > smallest) nodes.push({ id, label, stage, value, role });
  };
  const join = (from: string, to: string, value: number, role: ColourRole): void => {
    if (value > smallest) links.push({ from, to, value, role });
  };
  /** Heat into a node, less what leaves it by name: what it stores. */
  const store = (of: string, stage: number, value: number, role: ColourRole): void => {
    if (value > smallest) {
      place(`${of}-stored`, 'Stored', stage + 1, value, 'loss');
      join(of, `${of}-stored`, value, 'loss');
    } else if (value < -smallest) {
      place(`${of}-store`, 'From store', stage - 1, -value, 'loss');
      join(`${of}-store`, of, -value, role);
    }
  };

  place('sun', 'Sun on the panels', 0, year.irradiation, 'sun');
  place('collected', 'Out of the panels', 1, year.collectorHeat, 'solar');
  place('uncollected', 'Not collected', 1, year.collectorLoss, 'loss');
  join('sun', 'collected', year.collectorHeat, 'solar');
  join('sun', 'uncollected', year.collectorLoss, 'loss');

  const loopStored = year.collectorHeat - year.pipeLoss - year.coilHeat;
  // A node stands for the larger of what comes in and what goes out by name, so that both sides fit on it.
  place('coil', 'Into the tank', 2, year.coilHeat, 'solar');
  place('pipes', 'Lost by pipes', 2, year.pipeLoss, 'loss');
  join('collected', 'coil', year.coilHeat, 'solar');
  join('collected', 'pipes', year.pipeLoss, 'loss');
  store('collected', 1, loopStored, 'solar');

  place('delivered', 'Energy delivered', 3, year.deliveredEnergy, 'solar');
  place('tank', 'Lost by solar tank', 3, year.tankLoss, 'loss');
  place('relief', 'Let out by relief valve', 3, year.reliefHeat, 'loss');
  join('coil', 'delivered', year.deliveredEnergy, 'solar');
  join('coil', 'tank', year.tankLoss, 'loss');
  join('coil', 'relief', year.reliefHeat, 'loss');
  place('load', 'Pool or rooms', 3, year.loadHeat, 'solar');
  join('coil', 'load', year.loadHeat, 'solar');
  const spent = year.deliveredEnergy + year.tankLoss + year.reliefHeat + year.loadHeat;
  store('coil', 2, year.coilHeat - spent, 'solar');

  const electric = design.heater.carrier === 'electricity';
  const lost = Math.max(year.burnerLoss, 0);
  const fromAir = Math.max(-year.burnerLoss, 0);
  const bought = year.heaterFuel + year.heaterPvEnergy;
  const pvShare = bought > 0 ? year.heaterPvEnergy / bought : 0;
  const useful = year.heaterHeat - fromAir;
  place('fuel', electric ? 'Electricity' : 'Fuel', 4, year.heaterFuel, 'fuel');
  place('pv', 'Spare PV', 4, year.heaterPvEnergy, 'solar');
  place('air', 'Heat from the air', 4, fromAir, 'solar');
  place('burning', electric ? 'Lost in the element' : 'Lost in burning', 5, lost, 'loss');

  const hot = year.deliveredEnergy + year.heaterHeat;
  place('hot', 'Hot water', 5, hot, 'tankTop');
  join('delivered', 'hot', year.deliveredEnergy, 'solar');
  join('fuel', 'hot', useful * (1 - pvShare), 'fuel');
  join('pv', 'hot', useful * pvShare, 'solar');
  join('air', 'hot', fromAir, 'solar');
  join('fuel', 'burning', lost * (1 - pvShare), 'loss');
  join('pv', 'burning', lost * pvShare, 'loss');
  place('taps', 'Heat at the taps', 6, year.tapHeat, 'tankTop');
  place('heater', 'Lost by backup heater', 6, year.heaterLoss, 'loss');
  join('hot', 'taps', year.tapHeat, 'tankTop');
  join('hot', 'heater', year.heaterLoss, 'loss');
  const onTheWay = year.ringLoss + year.hotPipeLoss;
  place('ring', 'Lost on the way to the taps', 6, onTheWay, 'loss');
  join('hot', 'ring', onTheWay, 'loss');
  store('hot', 5, hot - year.tapHeat - year.heaterLoss - onTheWay, 'tankTop');
  return { nodes, links };
}

/** What comes into a node and what leaves it by its links. [J] */
export function throughNode({ links }: FlowGraph, id: string): { readonly in: number; readonly out: number } {
  const sum = (end: 'from' | 'to'): number =>
    links.reduce((total, link) => (link[end] === id ? total + link.value : total), 0);
  return { in: sum('to'), out: sum('from') };
}

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
export interface FlowLink {
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
    year.burnerLoss,
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
      place(`${of}-stored`, 'Stored', stage + 1, value, 'muted');
      join(of, `${of}-stored`, value, 'muted');
    } else if (value < -smallest) {
      place(`${of}-store`, 'From store', stage - 1, -value, 'muted');
      join(`${of}-store`, of, -value, role);
    }
  };

  place('sun', 'Sunlight on collectors', 0, year.irradiation, 'sun');
  place('collected', 'Heat from collectors', 1, year.collectorHeat, 'solar');
  place('uncollected', 'Not collected', 1, year.collectorLoss, 'muted');
  join('sun', 'collected', year.collectorHeat, 'sun');
  join('sun', 'uncollected', year.collectorLoss, 'muted');

  const loopStored = year.collectorHeat - year.pipeLoss - year.coilHeat;
  // A node stands for the larger of what comes in and what goes out by name, so that both sides fit on it.
  place('coil', 'Heat from the coil', 2, year.coilHeat, 'solar');
  place('pipes', 'Lost by pipes', 2, year.pipeLoss, 'muted');
  join('collected', 'coil', year.coilHeat, 'solar');
  join('collected', 'pipes', year.pipeLoss, 'muted');
  store('collected', 1, loopStored, 'solar');

  place('delivered', 'Energy delivered', 3, year.deliveredEnergy, 'solar');
  place('tank', 'Lost by solar tank', 3, year.tankLoss, 'muted');
  place('relief', 'Let out by relief valve', 3, year.reliefHeat, 'tankTop');
  join('coil', 'delivered', year.deliveredEnergy, 'solar');
  join('coil', 'tank', year.tankLoss, 'muted');
  join('coil', 'relief', year.reliefHeat, 'tankTop');
  store('coil', 2, year.coilHeat - year.deliveredEnergy - year.tankLoss - year.reliefHeat, 'solar');

  const electric = design.heater.carrier === 'electricity';
  place('fuel', electric ? 'Electricity' : 'Fuel', 2, year.heaterFuel, 'burner');
  place('burner', electric ? 'Element heat' : 'Burner heat', 3, year.heaterHeat, 'burner');
  place('burning', electric ? 'Lost in the element' : 'Lost in burning', 3, year.burnerLoss, 'muted');
  join('fuel', 'burner', year.heaterHeat, 'burner');
  join('fuel', 'burning', year.burnerLoss, 'muted');

  const hot = year.deliveredEnergy + year.heaterHeat;
  place('hot', 'Hot water', 4, hot, 'tankTop');
  join('delivered', 'hot', year.deliveredEnergy, 'solar');
  join('burner', 'hot', year.heaterHeat, 'burner');
  place('taps', 'Heat at the taps', 5, year.tapHeat, 'tankTop');
  place('heater', 'Lost by backup heater', 5, year.heaterLoss, 'muted');
  join('hot', 'taps', year.tapHeat, 'tankTop');
  join('hot', 'heater', year.heaterLoss, 'muted');
  store('hot', 4, hot - year.tapHeat - year.heaterLoss, 'tankTop');
  return { nodes, links };
}

/** What comes into a node and what leaves it by its links. [J] */
export function throughNode({ links }: FlowGraph, id: string): { readonly in: number; readonly out: number } {
  const sum = (end: 'from' | 'to'): number =>
    links.reduce((total, link) => (link[end] === id ? total + link.value : total), 0);
  return { in: sum('to'), out: sum('from') };
}

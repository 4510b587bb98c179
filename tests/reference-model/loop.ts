/** Array, pipes and coil as stirred volumes on a ring, in rounds of two seconds: docs/theory/steps.md, loop.md, collector.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import {
  type CompiledFluid,
  counterflowEffectiveness,
  fluidDensity,
  fluidSpecificHeat,
} from '@noonloop/sim-core/formulas';
import { coilConductance } from './coil.ts';
import { plugFlowDown, type ReferenceTank, turnOver, WATER } from './tank.ts';

const COPPER = 8930 * 385;

/** What acts on the loop. */
export interface Around {
  /** Light turned into heat, less what the sky takes. [W/m²] */
  readonly absorbed: number;
  readonly air: number;
  readonly room: number;
  /** a1 in the hour's wind. [W/(m²·K)] */
  readonly a1: number;
}

/** What a step exchanged. [J] */
export interface Exchange {
  absorbed: number;
  loss: number;
  collected: number;
  pipeLoss: number;
  coil: number;
  /** Part of it into a second tank. */
  coilBehind: number;
  /** Leaving the array, mean. [°C] */
  outlet: number;
}

/** The loop's state and sizes. */
export class ReferenceLoop {
  readonly absorber: number[];
  /** Hot outdoors, hot indoors, cold indoors, cold outdoors. */
  readonly pipe: number[];
  readonly pipeVolume: number[];
  readonly pipeCapacity: number[];
  readonly pipeLoss: number[];
  /** Beside each tank node that the coil passes, from its lowest. */
  coil: number[];
  readonly shares: number[];
  readonly lowest: number;
  readonly coilCapacity: number;
  readonly coilVolume: number;
  readonly nodeArea: number;
  readonly nodeCapacity: number;
  readonly dryCapacity: number;
  boilingPoint = Number.POSITIVE_INFINITY;
  boiling = false;
  /** The coil of a second tank, through which the fluid goes next, and that tank. */
  behind: { readonly loop: ReferenceLoop; readonly tank: ReferenceTank } | null = null;
  private readonly standing: number;

  readonly design: SystemDesign;
  readonly fluid: CompiledFluid;

  constructor(design: SystemDesign, fluid: CompiledFluid, air: number) {
    this.design = design;
    this.fluid = fluid;
    const { array, coil, loop, tank } = design;
    const { collector } = array;
    const bore = (Math.PI / 4) * loop.pipeInnerDiameter ** 2;
    const ofFluid = fluidDensity(fluid, 40) * fluidSpecificHeat(fluid, 40);
    const shell = loop.pipeOuterDiameter + 2 * loop.insulationThickness;
    const resistance =
      Math.log(shell / loop.pipeOuterDiameter) / (2 * Math.PI * loop.insulationConductivity) +
      1 / (Math.PI * shell * 10);
    const metal = (inner: number, outer: number) => (Math.PI / 4) * (outer ** 2 - inner ** 2) * COPPER;
    const out = (loop.pipeLength / 2) * loop.outdoorShare;
    const lengths = [out, loop.pipeLength / 2 - out, loop.pipeLength / 2 - out, out];
    this.pipeVolume = lengths.map((length) => length * bore);
    this.pipeCapacity = lengths.map(
      (length) => length * (bore * ofFluid + metal(loop.pipeInnerDiameter, loop.pipeOuterDiameter)),
    );
    this.pipeLoss = lengths.map((length) => (length * loop.heatBridgeFactor) / resistance);
    this.pipe = [air, tank.roomTemperature, tank.roomTemperature, air];
    const nodes = 4 * array.inSeries;
    this.nodeArea = (array.panels * collector.area) / nodes;
    this.nodeCapacity = collector.heatCapacity * this.nodeArea;
    this.dryCapacity = this.nodeCapacity * collector.dryCapacityShare;
    this.absorber = new Array<number>(nodes).fill(air);
    const plate = loop.exchanger === 'plate';
    const coilBore = (Math.PI / 4) * coil.innerDiameter ** 2;
    this.coilVolume = plate ? 0.0005 : coilBore * coil.length;
    this.coilCapacity = plate ? 0 : coil.length * (coilBore * ofFluid + metal(coil.innerDiameter, coil.outerDiameter));
    // The coil's part in each node.
    const [from, to] = [coil.bottom * tank.nodes, coil.top * tank.nodes];
    const within = Array.from({ length: tank.nodes }, (_, node) =>
      Math.max(0, Math.min(to, node + 1) - Math.max(from, node)),
    );
    this.lowest = plate ? 0 : within.findIndex((part) => part > 1e-6);
    this.shares = within.filter((part) => part > 1e-6).map((part) => part / (to - from));
    this.coil = this.shares.map(() => tank.initialTemperature);
    this.standing = plate ? 0 : coilConductance(design, fluid, 0, 45, 40);
  }

  /** Mean of the fluid: half array, half pipes. [°C] */
  mean(): number {
    const { absorber, pipe } = this;
    return 0.5 * average(absorber) + 0.5 * average(pipe);
  }

  coilMean(): number {
    return this.coil.reduce((sum, piece, at) => sum + piece * this.shares[at]!, 0);
  }

  /** Liquid in the coils. [m³] */
  coilsVolume(): number {
    return this.coilVolume + (this.behind?.loop.coilVolume ?? 0);
  }

  /** Its mean, by capacity. [°C] */
  coilsMean(): number {
    const other = this.behind?.loop;
    if (other === undefined) return this.coilMean();
    const heat = this.coilCapacity * this.coilMean() + other.coilCapacity * other.coilMean();
    return heat / (this.coilCapacity + other.coilCapacity);
  }

  /** The fluid's way through the coil in a step: what a round of so many seconds does, and what stays in the content at its end. */
  private wayThrough(
    tank: ReferenceTank,
    flow: number,
    capacityRate: number,
    backwards: boolean,
    gives: (heat: number) => void,
  ) {
    const { shares } = this;
    let content = this.coilMean();
    const middle = shares.length >> 1;
    const whole = coilConductance(this.design, this.fluid, flow, content, tank.nodes[this.lowest + middle]!);
    const keeps = shares.map((share) => Math.exp((-whole * share) / capacityRate));
    const down = shares.map((_, at) => shares.length - 1 - at);
    const pieces = backwards ? down.reverse() : down;
    const split = pieces.indexOf(middle) + (backwards ? 0 : 1);
    const past = (inlet: number, piece: number, dt: number): number => {
      const node = this.lowest + piece;
      const outlet = tank.nodes[node]! + (inlet - tank.nodes[node]!) * keeps[piece]!;
      const heat = capacityRate * (inlet - outlet) * dt;
      tank.nodes[node]! += heat / tank.capacity;
      gives(heat);
      return outlet;
    };
    return {
      round: (inlet: number, dt: number): number => {
        let t = inlet;
        for (const piece of pieces.slice(0, split)) t = past(t, piece, dt);
        const here = content;
        content = here + (dt * capacityRate * (t - here)) / this.coilCapacity;
        t = here;
        for (const piece of pieces.slice(split)) t = past(t, piece, dt);
        return t;
      },
      end: (): void => {
        this.coil = this.coil.map(() => content);
      },
    };
  }

  /** Fluid goes round; backwards it passes every part the other way. */
  flow(
    tank: ReferenceTank,
    flow: number,
    capacityRate: number,
    around: Around,
    seconds: number,
    backwards = false,
  ): Exchange {
    const { absorber, behind, design, nodeArea, nodeCapacity, pipe } = this;
    const done: Exchange = { absorbed: 0, loss: 0, collected: 0, pipeLoss: 0, coil: 0, coilBehind: 0, outlet: 0 };
    const plate = design.loop.exchanger === 'plate' ? this.plateExchange(capacityRate) : null;
    const coil =
      plate === null
        ? this.wayThrough(tank, flow, capacityRate, backwards, (heat) => {
            done.coil += heat;
          })
        : null;
    const next = behind?.loop.wayThrough(behind.tank, flow, capacityRate, backwards, (heat) => {
      done.coil += heat;
      done.coilBehind += heat;
    });
    const bottom = tank.nodes[0]!;
    const turn = <T>(list: T[]): T[] => (backwards ? [...list].reverse() : list);
    const places = turn(absorber.map((_, at) => at));
    const hot = backwards ? [3, 2] : [0, 1];
    const cold = backwards ? [1, 0] : [2, 3];
    const rounds = Math.max(1, Math.round(seconds / 2));
    const dt = seconds / rounds;
    const through = (inlet: number, at: number): number => {
      const here = pipe[at]!;
      const lost = this.pipeLoss[at]! * (here - (at === 1 || at === 2 ? around.room : around.air));
      if (this.pipeCapacity[at]! > 0)
        pipe[at] = here + (dt * (capacityRate * (inlet - here) - lost)) / this.pipeCapacity[at]!;
      done.pipeLoss += lost * dt;
      return here;
    };
    for (let round = 0; round < rounds; round++) {
      let t = pipe[cold[1]!]!;
      const intoArray = t;
      for (const at of places) {
        const here = absorber[at]!;
        const d = 0.5 * (t + here) - around.air;
        const lost = nodeArea * (around.a1 + design.array.collector.a2 * Math.abs(d)) * d;
        absorber[at] = here + (dt * (capacityRate * (t - here) + nodeArea * around.absorbed - lost)) / nodeCapacity;
        done.absorbed += nodeArea * around.absorbed * dt;
        done.loss += lost * dt;
        t = here;
      }
      done.collected += capacityRate * (t - intoArray) * dt;
      done.outlet += t / rounds;
      for (const at of hot) t = through(t, at);
      if (coil !== null) t = coil.round(t, dt);
      if (next !== undefined) t = next.round(t, dt);
      if (plate !== null) {
        const heat = plate * (t - bottom);
        done.coil += heat * dt;
        t -= heat / capacityRate;
      }
      for (const at of cold) t = through(t, at);
    }
    coil?.end();
    next?.end();
    if (plate !== null) this.charge(tank, bottom, done.coil, seconds);
    return done;
  }

  /** Heat of a counterflow exchanger per kelvin between the two inlets. [W/K] */
  private plateExchange(capacityRate: number): number {
    const { conductance, secondaryFlow } = this.design.loop.plate;
    const smaller = Math.min(capacityRate, secondaryFlow * WATER);
    return (
      smaller * counterflowEffectiveness(conductance / smaller, smaller / Math.max(capacityRate, secondaryFlow * WATER))
    );
  }

  /** Water of the tank's bottom, warmed by the exchanger, comes back at its height. */
  private charge(tank: ReferenceTank, bottom: number, heat: number, seconds: number): void {
    const { plate } = this.design.loop;
    const entry = Math.min(Math.floor(plate.returnHeight * tank.nodes.length), tank.nodes.length - 1);
    const volume = plate.secondaryFlow * seconds;
    plugFlowDown(tank.nodes, entry, volume / tank.volume, bottom + heat / (volume * WATER));
    turnOver(tank.nodes);
  }

  /** Fluid stands: every part on its own. */
  stand(tank: ReferenceTank, around: Around, seconds: number): Exchange {
    const { absorber, design, nodeArea, nodeCapacity, dryCapacity, pipe } = this;
    const done: Exchange = {
      absorbed: 0,
      loss: 0,
      collected: 0,
      pipeLoss: 0,
      coil: 0,
      coilBehind: 0,
      outlet: absorber.at(-1)!,
    };
    const dt = seconds / 10;
    const tb = this.boilingPoint;
    for (let round = 0; round < 10; round++) {
      for (let at = 0; at < absorber.length; at++) {
        const d = absorber[at]! - around.air;
        const lost = nodeArea * (around.a1 + design.array.collector.a2 * Math.abs(d)) * d;
        const heat = this.heatOf(absorber[at]!) + (nodeArea * around.absorbed - lost) * dt;
        absorber[at] = heat <= nodeCapacity * tb ? heat / nodeCapacity : tb + (heat - nodeCapacity * tb) / dryCapacity;
        done.absorbed += nodeArea * around.absorbed * dt;
        done.loss += lost * dt;
      }
      for (let at = 0; at < 4; at++) {
        if (this.pipeCapacity[at] === 0) continue;
        const lost = this.pipeLoss[at]! * (pipe[at]! - (at === 1 || at === 2 ? around.room : around.air));
        pipe[at]! -= (lost * dt) / this.pipeCapacity[at]!;
        done.pipeLoss += lost * dt;
      }
      done.coil += this.standCoil(tank, dt);
      if (this.behind !== null) done.coilBehind += this.behind.loop.standCoil(this.behind.tank, dt);
    }
    done.coil += done.coilBehind;
    return done;
  }

  /** The content beside the water around it. @returns Heat into the tank. [J] */
  private standCoil(tank: ReferenceTank, dt: number): number {
    let given = 0;
    for (let piece = 0; this.standing > 0 && piece < this.coil.length; piece++) {
      const node = this.lowest + piece;
      const share = this.shares[piece]!;
      const heat = this.standing * share * (this.coil[piece]! - tank.nodes[node]!) * dt;
      this.coil[piece]! -= heat / (this.coilCapacity * share);
      tank.nodes[node]! += heat / tank.capacity;
      given += heat;
    }
    return given;
  }

  /** Heat of a collector node above 0 °C: with the liquid up to T_b, the empty absorber's from there. [J] */
  heatOf(t: number): number {
    const { boilingPoint, dryCapacity, nodeCapacity } = this;
    return t <= boilingPoint ? nodeCapacity * t : nodeCapacity * boilingPoint + dryCapacity * (t - boilingPoint);
  }

  /** After a step: whether the array boils, and what steam took along. @returns Heat that left with it. [J] */
  settleBoiling(atPressure: number, flowed: boolean, stagnation: number): number {
    const { absorber, nodeCapacity, dryCapacity } = this;
    const hottest = () => Math.max(...absorber);
    let gone = 0;
    this.boiling = hottest() > this.boilingPoint;
    if (!this.boiling) {
      this.boilingPoint = Math.max(atPressure, 80);
      this.boiling = hottest() > this.boilingPoint;
      if (!this.boiling) return 0;
      // Flashed: the metal keeps its temperature, what the liquid held above T_b goes.
      for (const t of absorber) gone += Math.max(0, (nodeCapacity - dryCapacity) * (t - this.boilingPoint));
      return gone;
    }
    for (let at = 0; flowed && at < absorber.length; at++) {
      const over = absorber[at]! - this.boilingPoint;
      if (over <= 0) continue;
      const kept = this.boilingPoint + (over * nodeCapacity) / dryCapacity;
      absorber[at] = Math.min(kept, Math.max(absorber[at]!, stagnation));
      gone += dryCapacity * (kept - absorber[at]!);
    }
    return gone;
  }

  arrayHeat(): number {
    return this.absorber.reduce((sum, t) => sum + this.heatOf(t), 0);
  }

  pipeHeat(): number {
    const inCoils =
      this.coilMean() * this.coilCapacity +
      (this.behind === null ? 0 : this.behind.loop.coilMean() * this.behind.loop.coilCapacity);
    return this.pipe.reduce((sum, t, at) => sum + t * this.pipeCapacity[at]!, inCoils);
  }
}

const average = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;

/** Pressure of the loop, steam, leak and make-up: docs/theory/pressure.md. Pressures are gauge. */
import type { SystemDesign } from '@noonloop/sim-core';
import { boilingPoint, type CompiledFluid, compileFluid, fluidDensity } from '@noonloop/sim-core/formulas';
import type { ReferenceLoop } from './loop.ts';

const GRAVITY = 9.80665;

export class ReferencePressure {
  gauge: number;
  top: number;
  boils = 0;
  mass: number;
  glycol: number;
  madeUp = 0;
  leaked = 0;
  longestSteam = 0;
  private readonly column: number;
  private readonly filled: number;

  private readonly design: SystemDesign;
  private readonly fluid: CompiledFluid;
  private readonly loop: ReferenceLoop;
  private readonly air: number;

  constructor(design: SystemDesign, fluid: CompiledFluid, loop: ReferenceLoop, air: number) {
    this.design = design;
    this.fluid = fluid;
    this.loop = loop;
    this.air = air;
    const { array, loop: of } = design;
    this.column = GRAVITY * of.staticHeight * fluidDensity(fluid, of.fillTemperature);
    this.gauge = of.fillPressure;
    this.top = of.pressure;
    const parts =
      array.panels * array.collector.fluidContent + loop.pipeVolume.reduce((a, b) => a + b, 0) + loop.coilsVolume();
    this.filled = parts + Math.max(0, this.contentAt(of.fillPressure));
    this.mass = this.filled * fluidDensity(fluid, of.fillTemperature);
    this.glycol = this.mass * of.glycolMassFraction;
  }

  /** Liquid in the vessel at a pressure. [m³] */
  private contentAt(gauge: number): number {
    const { vesselPrecharge, vesselVolume } = this.design.loop;
    return vesselVolume * (1 - (vesselPrecharge + this.air) / (gauge + this.air));
  }

  private set(content: number): void {
    const { vesselPrecharge, vesselVolume } = this.design.loop;
    const gas = (vesselVolume * (vesselPrecharge + this.air)) / (vesselVolume - content) - this.air;
    this.gauge = content >= 0 ? gas : this.column - this.air;
    this.top = this.gauge - this.column;
    const { fluid, glycolMassFraction } = this.fluid;
    this.boils = boilingPoint(fluid, glycolMassFraction, Math.max(this.top + this.air, 612));
  }

  /** After a step. The valve opens until it need not. @returns What it let out. [m³] */
  settle(standing: boolean): number {
    let lost = 0;
    for (;;) {
      const gulp = this.openOnce(standing);
      if (gulp === 0) break;
      lost += gulp;
    }
    if (this.design.loop.makeUp && this.fill(0) > 0) this.openOnce(standing);
    return lost;
  }

  /** @returns Let out by the relief valve when it opens once. [m³] */
  private openOnce(standing: boolean): number {
    const { array, loop, tank } = this.design;
    const { absorber, pipe, pipeVolume } = this.loop;
    const density = (t: number) => fluidDensity(this.fluid, t);
    const nodeVolume = (array.panels * array.collector.fluidContent) / absorber.length;
    let inLoop = this.loop.coilsVolume() * density(this.loop.coilsMean());
    for (const t of absorber) inLoop += nodeVolume * density(t);
    for (const [at, t] of pipe.entries()) inLoop += pipeVolume[at]! * density(t);
    const vessel = density(tank.roomTemperature);
    let content = (this.mass - inLoop) / vessel;
    this.set(content);
    if (standing && Math.max(...absorber) > this.boils) {
      content = this.withSteam(content, nodeVolume, vessel);
      this.set(content);
    }
    if (content <= this.contentAt(loop.reliefPressure)) return 0;
    const lost = content - this.contentAt(0.9 * loop.reliefPressure);
    this.take(lost * vessel);
    this.set(content - lost);
    return lost;
  }

  /** Liquid of the vessel once steam has pushed: the volume in the pipes agrees with its own pressure, found by halving. */
  private withSteam(content: number, nodeVolume: number, vessel: number): number {
    const { loop } = this.design;
    const bore = (Math.PI / 4) * loop.pipeInnerDiameter ** 2;
    const line = bore * loop.pipeLength;
    const pushed = (inPipe: number) => this.push(content, nodeVolume, vessel, inPipe);
    const reach = (stored: number): number => {
      const { vesselPrecharge, vesselVolume } = loop;
      const held = Math.max(stored, 0);
      const pressure = (vesselVolume * (vesselPrecharge + this.air)) / (vesselVolume - held) - this.column;
      return bore * Math.min(loop.pipeLength, this.steamLength(pressure));
    };
    let [low, high] = [0, line];
    if (reach(pushed(line).stored) >= line) low = line;
    for (let halving = 0; halving < 14 && low < high; halving++) {
      const middle = 0.5 * (low + high);
      if (middle > reach(pushed(middle).stored)) high = middle;
      else low = middle;
    }
    const { inPipe, stored } = pushed(low);
    this.longestSteam = Math.max(this.longestSteam, inPipe / bore);
    return stored;
  }

  /** L = P A/[U' (T_s − 30 °C)], without heat bridges. [m] */
  private steamLength(pressure: number): number {
    const { array, loop } = this.design;
    const shell = loop.pipeOuterDiameter + 2 * loop.insulationThickness;
    const resistance =
      Math.log(shell / loop.pipeOuterDiameter) / (2 * Math.PI * loop.insulationConductivity) +
      1 / (Math.PI * shell * 10);
    const steam = boilingPoint('water', 0, Math.max(pressure, 612));
    return (loop.steamPower * array.panels * array.collector.area * resistance) / Math.max(steam - 30, 1);
  }

  /** Nodes turn to steam, hottest first, each with its share of the pipe, until the next just boils. */
  private push(
    content: number,
    nodeVolume: number,
    vessel: number,
    inPipe: number,
  ): { stored: number; inPipe: number } {
    const { absorber } = this.loop;
    let stored = content;
    let steamed = 0;
    for (const t of [...absorber].sort((a, b) => b - a)) {
      const room = this.contentAt(this.vapourPressure(t) - this.air + this.column) - stored;
      if (room <= 0) break;
      const whole = (nodeVolume * fluidDensity(this.fluid, t)) / vessel + inPipe / absorber.length;
      const out = Math.min(whole, room);
      stored += out;
      steamed += ((out / whole) * inPipe) / absorber.length;
    }
    return { stored, inPipe: steamed };
  }

  /** Pressure at which the mixture boils at t, absolute, by halving its boiling point. [Pa] */
  private vapourPressure(t: number): number {
    const { fluid, glycolMassFraction } = this.fluid;
    let [low, high] = [Math.log(700), Math.log(1e7)];
    for (let halving = 0; halving < 26; halving++) {
      const middle = 0.5 * (low + high);
      if (boilingPoint(fluid, glycolMassFraction, Math.exp(middle)) < t) low = middle;
      else high = middle;
    }
    return Math.exp(low);
  }

  private take(mass: number): void {
    this.glycol *= 1 - mass / this.mass;
    this.mass -= mass;
  }

  /** Water for what leaked, and below the fill pressure, at which the filling valve opens, for what else is missing. @returns The latter. [m³] */
  private fill(leaked: number): number {
    const { loop } = this.design;
    const densityOf = (share: number) => fluidDensity(compileFluid(this.fluid.fluid, share), loop.fillTemperature);
    const held = this.mass / densityOf(this.glycol / this.mass);
    const isOpen = this.gauge < loop.fillPressure && this.filled - held > 1e-12;
    if (!isOpen && leaked === 0) return 0;
    const volume = isOpen ? this.filled : held;
    this.glycol *= Math.exp(-leaked / held);
    for (let round = 0; round < 20; round++) this.mass = volume * densityOf(this.glycol / this.mass);
    this.madeUp += leaked + volume - held;
    return volume - held;
  }

  /** An hour's leak and make-up. @returns Glycol by mass and freezing point at its end. */
  tend(): { glycol: number; freezing: number } {
    const { loop } = this.design;
    const volume = this.gauge > 0 ? loop.leak * 3600 : 0;
    const kind = this.fluid.fluid;
    this.leaked += volume;
    if (loop.makeUp) this.fill(volume);
    else if (volume > 0) this.take(volume * fluidDensity(this.fluid, loop.fillTemperature));
    const glycol = this.glycol / this.mass;
    return { glycol, freezing: loop.makeUp ? compileFluid(kind, glycol).freezingPoint : this.fluid.freezingPoint };
  }
}

/** Who lets the pump run: docs/theory/pump-and-control.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import type { ReferenceLoop } from './loop.ts';
import type { ReferenceTank } from './tank.ts';

export class ReferenceControl {
  heldOff = false;
  private running = false;
  private limited = false;
  private ranFor = 0;

  private readonly design: SystemDesign;

  constructor(design: SystemDesign) {
    this.design = design;
  }

  /** Whether the pump turns in a step. */
  decide(
    offered: number,
    loop: ReferenceLoop,
    tank: ReferenceTank,
    hour: number,
    out: boolean,
    seconds: number,
  ): boolean {
    const { control, pump } = this.design;
    const top = Math.max(tank.nodes.at(-1)!, loop.behind?.tank.nodes.at(-1) ?? Number.NEGATIVE_INFINITY);
    if (control.highLimit !== null) {
      if (top >= control.highLimit) this.limited = true;
      if (top <= control.highLimit - control.highLimitHysteresis) this.limited = false;
    }
    const [start, stop] =
      pump.drive === 'direct'
        ? [pump.motor.startCurrent, pump.motor.frictionCurrent]
        : [pump.startPower, pump.stopPower];
    const enough = offered > 0 && offered >= (this.running ? stop : start);
    // With two tanks in series the sensor sits in the second.
    const would = enough && !out && this.asks(loop, loop.behind?.tank ?? tank, hour);
    this.heldOff = would && this.limited;
    this.ranFor = would && !this.limited ? (this.running ? this.ranFor : 0) + seconds : 0;
    this.running = would && !this.limited;
    return this.running;
  }

  private asks(loop: ReferenceLoop, tank: ReferenceTank, hour: number): boolean {
    const { difference, mode, schedule } = this.design.control;
    if (mode === 'power') return true;
    if (mode === 'schedule') return schedule.some(([from, to]) => hour % 24 >= from && hour % 24 < to);
    const end = loop.absorber.at(-1)!;
    const pipe = loop.pipe[0]!;
    const contact = this.running ? 0 : difference.pipeSensorContact;
    const collector = difference.collectorSensor === 'absorber' ? end : pipe + contact * (end - pipe);
    const last = tank.nodes.length - 1;
    const place = Math.min(Math.max(difference.tankSensorHeight * (last + 1) - 0.5, 0), last);
    const below = Math.min(Math.floor(place), last - 1);
    const sensed = tank.nodes[below]! + (place - below) * (tank.nodes[below + 1]! - tank.nodes[below]!);
    if (!this.running) return collector - sensed >= difference.start;
    return collector - sensed > difference.stop || this.ranFor < difference.minimumRunTime;
  }
}

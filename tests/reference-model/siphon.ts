/** Flow by buoyancy where there is no check valve: docs/theory/loop.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import { fluidDensity } from '@noonloop/sim-core/formulas';
import type { ReferenceLoop } from './loop.ts';
import { loopDrop, rootOf } from './pump.ts';
import type { ReferenceTank } from './tank.ts';

/** Flows below this are none. [m³/s] */
const LEAST = 1e-8;

/** Volume flow in which friction takes up what the columns weigh apart; negative backwards. @param before - Last step's. [m³/s] */
export function buoyantFlow(design: SystemDesign, ring: ReferenceLoop, tank: ReferenceTank, before: number): number {
  const { array, coil, loop, tank: store } = design;
  const { fluid } = ring;
  const panel = Math.sqrt(2 * array.collector.area) * Math.sin((array.tilt * Math.PI) / 180);
  const [bottom, top] = [coil.bottom * store.height, coil.top * store.height];
  const hot = top - loop.staticHeight;
  const cold = loop.staticHeight - panel - bottom;
  const rises = [
    hot * loop.outdoorShare,
    hot * (1 - loop.outdoorShare),
    cold * (1 - loop.outdoorShare),
    cold * loop.outdoorShare,
  ];
  let weight = 0;
  for (const t of ring.absorber) weight += (panel / ring.absorber.length) * fluidDensity(fluid, t);
  for (const [at, t] of ring.pipe.entries()) weight += rises[at]! * fluidDensity(fluid, t);
  // In the coil the fluid soon has its water's temperature; while it flows, between that and the content's.
  const content = ring.coilMean();
  for (const [piece, share] of ring.shares.entries()) {
    const here = before === 0 ? tank.nodes[ring.lowest + piece]! : 0.5 * (tank.nodes[ring.lowest + piece]! + content);
    weight += (bottom - top) * share * fluidDensity(fluid, here);
  }
  const drive = -9.80665 * weight;
  const t = ring.mean();
  const flow = rootOf((x) => loopDrop(design, fluid, t, x) - Math.abs(drive), 0, 1e-3, 1e-12);
  return flow < LEAST ? 0 : Math.sign(drive) * flow;
}

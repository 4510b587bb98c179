/** One step of the loop through the coils of two tanks, one behind the other, or past one of them by a valve. */
import { closeCircuit } from './branches.ts';
import { coilMean, setContent, setLoop, takeContent, takeLoop } from './circuit.ts';
import { type Circuit, coilTemperature, type LoopStep } from './circuit-state.ts';
import { FILM_CLOSE, MOST_TRIALS, setCoil, setFilms, weighCoil } from './coil-step.ts';
import { RING, setPace } from './ring.ts';

const { own: OWN } = RING;

/**
 * As `circulate`, with two coils in the ring: both are solved together, each with the films and the sort of exchange that came out. A coil
 * that a valve leads the fluid past is as if it were not there; it rests in its tank. Allocates nothing.
 *
 * @param circuit - That of the first coil, its `further` that of the second.
 * @param step - Likewise.
 */
export function circulatePair(circuit: Circuit, step: LoopStep): void {
  const further = circuit.further!;
  const behind = step.further!;
  const { conditions, exchange, stream } = step;
  const { capacityRate } = stream;
  behind.stream.flow = stream.flow;
  behind.stream.capacityRate = capacityRate;
  setLoop(circuit, capacityRate, conditions);
  setContent(further, capacityRate, conditions);
  if (!circuit.coil.open) leadPast(circuit, step);
  if (!further.coil.open) leadPast(further, behind);
  let between = coilTemperature(circuit.coil);
  let betweenBehind = coilTemperature(further.coil);
  for (let trial = 1; ; trial++) {
    if (circuit.coil.open) setOpen(circuit, step, between, trial);
    if (further.coil.open) setOpen(further, behind, betweenBehind, trial);
    closeCircuit(circuit);
    // Both are looked at: the sorts are corrected on the way.
    const isWrong = circuit.coil.open && mustRepeat(circuit, step, between);
    const isWrongBehind = further.coil.open && mustRepeat(further, behind, betweenBehind);
    if (!(isWrong || isWrongBehind) || trial === MOST_TRIALS) break;
    between = coilMean(circuit);
    betweenBehind = coilMean(further);
  }
  takeLoop(circuit, capacityRate, conditions, exchange);
  takeContent(further);
}

/** Films and pieces of a coil that the fluid passes. @param between - Fluid in its middle. [°C] */
function setOpen(circuit: Circuit, step: LoopStep, between: number, trial: number): void {
  const { coil } = circuit;
  setFilms(coil, coil.films!, step, between);
  setCoil(circuit, step, trial === 1);
}

/** Whether the solved step says otherwise than it was set up with. */
function mustRepeat(circuit: Circuit, step: LoopStep, between: number): boolean {
  const isFar = Math.abs(coilMean(circuit) - between) > FILM_CLOSE;
  return weighCoil(circuit, step) || isFar;
}

/** Lets what comes to a coil leave it as it came. */
function leadPast({ coilAt, contentAt, ring }: Circuit, { exchange }: LoopStep): void {
  for (let piece = 0; piece < coilAt.length; piece++) passBy(ring, coilAt[piece]!);
  passBy(ring, contentAt);
  exchange.coilHeat = 0;
}

function passBy(ring: Circuit['ring'], at: number): void {
  ring[at + OWN] = 0;
  setPace(ring, at, 0);
}

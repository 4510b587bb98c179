export { type CompiledCoil, coilUA, compileCoil } from './coil.ts';
export { type CoilConductance, type CoilQuery, coilConductance } from './coil-conductance.ts';
export {
  type CoilStream,
  type CounterflowStreams,
  coilEffectiveness,
  coilExchange,
  counterflowEffectiveness,
  counterflowExchange,
  type Exchange,
} from './exchanger.ts';
export {
  type ExpansionInput,
  type ExpansionVessel,
  sizeExpansionVessel,
  type Vessel,
  vesselPressure,
  type WorkingStep,
} from './expansion.ts';
export {
  type CompiledCoilFilm,
  coiledTubeNusselt,
  horizontalCylinderNusselt,
  straightTubeNusselt,
} from './film.ts';
export { compileFlowTable, type FlowTable, tableFlow } from './flow-table.ts';
export { type CompiledFriction, frictionFactor, type PipeFlow, pipePressureDrop } from './friction.ts';
export {
  type CompiledHydraulics,
  compileHydraulics,
  type HydraulicParts,
  type OperatingPoint,
  pumpOperatingPoint,
} from './hydraulics.ts';
export { type InsulatedPipe, PIPE_FILM_COEFFICIENT, pipeLossConductance, pipeOutlet } from './pipe.ts';
export { type PumpPoint, type PumpState, pumpState } from './pump.ts';
export { type ThermosiphonQuery, thermosiphonFlow } from './thermosiphon.ts';

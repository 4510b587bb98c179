export { type CoilConductance, type CoilQuery, coilConductance } from './coil-conductance.ts';
export { type DirectPumpConditions, type DirectPumpPoint, directPumpPoint } from './direct-pump.ts';
export {
  type Drained,
  type Draining,
  drained,
  dryStanding,
  type Filled,
  type Filling,
  fillTime,
  type Refilled,
  refilled,
} from './drain-back.ts';
export {
  type CoilStream,
  type CounterflowStreams,
  coilEffectiveness,
  coilExchange,
  counterflowEffectiveness,
  counterflowExchange,
  type Exchange,
} from './exchanger.ts';
export { type Vessel, vesselPressure } from './expansion.ts';
export { coiledTubeNusselt, horizontalCylinderNusselt, straightTubeNusselt } from './film.ts';
export { frictionFactor, type PipeFlow, pipePressureDrop } from './friction.ts';
export {
  type HydraulicParts,
  type OperatingConditions,
  type OperatingPoint,
  pumpOperatingPoint,
} from './hydraulics.ts';
export { type CooledByNight, coolByNight, type NightCooling } from './night-cooling.ts';
export { type InsulatedPipe, PIPE_FILM_COEFFICIENT, pipeLossConductance, pipeOutlet } from './pipe.ts';
export { type PlateRating, plateConductance } from './plate.ts';
export { type PumpPoint, type PumpState, pumpState } from './pump.ts';
export { type PumpCurvePoint, pumpCurvePoint } from './pump-curves.ts';
export {
  type CollectorStrings,
  collectorStages,
  type GroupState,
  type StageConditions,
  type StagesState,
} from './stages.ts';
export { type ThermosiphonQuery, thermosiphonFlow } from './thermosiphon.ts';
export { type SteamReach, steamReach } from './vessel-need.ts';

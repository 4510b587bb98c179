export { checkGauges } from './check-gauges.ts';
export {
  GAUGE_EVIDENCE,
  GAUGE_FAULTS,
  GAUGE_FIGURES,
  GAUGE_UNTOLD,
  type GaugeCheck,
  type GaugeEvidenceCode,
  type GaugeFault,
  type GaugeFigure,
  type GaugeFigureKey,
  type GaugeFinding,
  type GaugeUntoldCode,
} from './types.ts';

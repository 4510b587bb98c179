/** Cautions about odd roofs: modules in series, loops that drain or hold water. */
import { celsius, type Rule } from './types.ts';

/** Direct current that may be touched. [V] IEC 60364-4-41 (from memory). */
const SAFE_VOLTAGE = 60;
/** Cells on a frosty morning, and those of a data sheet. [°C] Judgement. */
const COLD_CELLS = -10;
const SHEET_CELLS = 25;

/** Modules in series. @internal */
export const moduleVoltage: Rule = ({ result: { design } }) => {
  const { inSeries, module } = design.pv;
  const each = module.openCircuitVoltage + module.voltageTemperatureCoefficient * (COLD_CELLS - SHEET_CELLS);
  const volts = inSeries * each;
  if (design.pump.drive === 'mains' || inSeries === 1 || volts <= SAFE_VOLTAGE) return null;
  return {
    code: 'module-voltage',
    severity: 'danger',
    facts: {
      count: { value: inSeries, unit: '1' },
      volts: { value: volts, unit: 'V' },
      cold: celsius(COLD_CELLS),
    },
    finding: ['found'],
    advice: ['act'],
  };
};

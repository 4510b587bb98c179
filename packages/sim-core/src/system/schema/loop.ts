import { z } from 'zod';
import { choice, count, defaulted, fault, label, quantity, quantityOr } from './field.ts';

const moduleSource = 'invented: data sheet of a common small 36-cell module';

/** Schema of the PV module. */
const moduleSchema = z
  .strictObject({
    name: defaulted(label, '20 W module', '', moduleSource),
    shortCircuitCurrent: quantityOr('current', 0.01, 30, 1.24, moduleSource),
    openCircuitVoltage: quantityOr('voltage', 1, 200, 21.6, moduleSource),
    maximumPowerCurrent: quantityOr('current', 0.01, 30, 1.14, moduleSource),
    maximumPowerVoltage: quantityOr('voltage', 1, 200, 17.5, moduleSource),
    currentTemperatureCoefficient: quantityOr('currentPerKelvin', 0, 0.1, 0.0007, moduleSource),
    voltageTemperatureCoefficient: quantityOr('voltagePerKelvin', -1, 0, -0.075, moduleSource),
    cells: defaulted(count(1, 200), 36, '', moduleSource),
    nominalOperatingCellTemperature: quantityOr(
      'temperature',
      30,
      70,
      46,
      'glass-front module in the open, common practice, no source',
    ),
  })
  .superRefine((module, context) => {
    if (module.maximumPowerCurrent >= module.shortCircuitCurrent) {
      fault(
        context,
        `${module.maximumPowerCurrent} A`,
        `less than the short-circuit current, ${module.shortCircuitCurrent} A`,
        'Check the data sheet.',
        ['maximumPowerCurrent'],
      );
    }
    if (module.maximumPowerVoltage >= module.openCircuitVoltage) {
      fault(
        context,
        `${module.maximumPowerVoltage} V`,
        `less than the open-circuit voltage, ${module.openCircuitVoltage} V`,
        'Check the data sheet.',
        ['maximumPowerVoltage'],
      );
    }
  });

/** Schema of the modules; their plane follows the array's where none is given. */
export const pvSchema = z.strictObject({
  modules: defaulted(count(1, 20), 1, '', 'judgement: one module'),
  tilt: quantity('angle', 0, 90).optional(),
  azimuth: quantity('angle', 0, 360).optional(),
  module: moduleSchema.prefault({}),
});

const pumpSource = 'invented: a small brushless circulator';

/** Schema of the pump behind its booster. */
export const pumpSchema = z
  .strictObject({
    boosterEfficiency: quantityOr('fraction', 0.1, 1, 0.9, 'judgement: a plain step-down converter'),
    startPower: quantityOr('power', 0, 500, 2, pumpSource),
    stopPower: quantityOr('power', 0, 500, 1.2, pumpSource),
    shutOffHead: quantityOr('length', 0.1, 50, 3, pumpSource),
    openFlow: quantityOr('flow', 1e-6, 1e-2, 10 / 60_000, pumpSource),
    shutOffPower: quantityOr('power', 0.1, 1000, 10, pumpSource),
    openFlowPower: quantityOr('power', 0.1, 1000, 16, pumpSource),
  })
  .superRefine((pump, context) => {
    if (pump.stopPower > pump.startPower) {
      fault(
        context,
        `${pump.stopPower} W`,
        `at most the start power, ${pump.startPower} W`,
        'A running pump needs less than one that starts.',
        ['stopPower'],
      );
    }
    if (pump.openFlowPower < pump.shutOffPower) {
      fault(
        context,
        `${pump.openFlowPower} W`,
        `at least the shut-off power, ${pump.shutOffPower} W`,
        'A centrifugal pump draws more power the more it moves.',
        ['openFlowPower'],
      );
    }
  });

/** Schema of fluid and pipes. */
export const loopSchema = z
  .strictObject({
    fluid: defaulted(
      choice(['propylene-glycol', 'ethylene-glycol', 'water']),
      'propylene-glycol',
      '',
      'food-grade glycol behind a single wall, common practice, no source',
    ),
    glycolMassFraction: quantity('fraction', 0, 0.6).optional(),
    pressure: quantityOr(
      'pressure',
      0,
      1e6,
      1.5e5,
      'judgement: what keeps the top of the loop under pressure when cold',
    ),
    fluidLimit: quantityOr(
      'temperature',
      60,
      250,
      120,
      'from about there glycol ages fast (a fluid maker’s technical page)',
    ),
    pipeLength: quantityOr('length', 1, 500, 20, 'judgement: two storeys, there and back'),
    pipeInnerDiameter: quantityOr('length', 0.004, 0.1, 0.016, 'a common copper tube of EN 1057'),
    pipeOuterDiameter: quantityOr('length', 0.005, 0.12, 0.018, 'a common copper tube of EN 1057'),
    insulationThickness: quantityOr(
      'length',
      0,
      0.2,
      0.019,
      'rubber foam of a common thickness, common practice, no source',
    ),
    insulationConductivity: quantityOr(
      'conductivity',
      0.01,
      0.5,
      0.04,
      'warm rubber foam, handbook value (from memory)',
    ),
    outdoorShare: quantityOr('fraction', 0, 1, 0.4, 'judgement'),
    fittingLoss: quantityOr('fraction', 0, 500, 20, 'judgement: a dozen elbows, a check valve, two ball valves'),
  })
  .superRefine((loop, context) => {
    if (loop.pipeOuterDiameter <= loop.pipeInnerDiameter) {
      fault(
        context,
        `${loop.pipeOuterDiameter} m`,
        `more than the bore, ${loop.pipeInnerDiameter} m`,
        'Check the two diameters.',
        ['pipeOuterDiameter'],
      );
    }
    if (loop.fluid === 'water' && (loop.glycolMassFraction ?? 0) > 0) {
      fault(
        context,
        String(loop.glycolMassFraction),
        '0 with fluid "water"',
        'Name the glycol or leave the share out.',
        ['glycolMassFraction'],
      );
    }
  });

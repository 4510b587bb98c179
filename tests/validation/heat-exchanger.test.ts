import { describe, expect, it } from 'vitest';
import { coilExchange, counterflowExchange } from '../../packages/sim-core/src/physics/loop/exchanger.ts';

describe('coilExchange', () => {
  it.each([
    [200, 150, 65, 40, 0.7364028619, 46.58992845, 2761.510732],
    [400, 187.5, 80, 55, 0.881558171, 57.96104573, 4132.303926],
    [60, 300, 30, 45, 0.1812692469, 32.7190387, -815.7116111],
  ])('UA %f, ṁc %f, %f into %f °C: ε %f, out %f °C, %f W [effectiveness–NTU, computed apart]', (...row) => {
    const [conductance, capacityRate, inletTemperature, tankTemperature, effectiveness, outlet, power] = row;
    const exchange = coilExchange({ conductance, capacityRate, inletTemperature, tankTemperature });
    expect(exchange.effectiveness).toBeCloseTo(effectiveness, 9);
    expect(exchange.outletTemperature).toBeCloseTo(outlet, 7);
    expect(exchange.power).toBeCloseTo(power, 5);
  });
});

describe('counterflowExchange', () => {
  it.each([
    [900, 190, 260, 70, 25, 0.9055005355, 7742.029579],
    [500, 200, 200, 60, 20, 0.7142857143, 5714.285714],
  ])('UA %f, ṁc %f and %f, %f and %f °C: ε %f, %f W [Kays & London, computed apart]', (...row) => {
    const [conductance, hotCapacityRate, coldCapacityRate, hotInlet, coldInlet, effectiveness, power] = row;
    const exchange = counterflowExchange({ conductance, hotCapacityRate, coldCapacityRate, hotInlet, coldInlet });
    expect(exchange.effectiveness).toBeCloseTo(effectiveness, 9);
    expect(exchange.power).toBeCloseTo(power, 5);
  });
});

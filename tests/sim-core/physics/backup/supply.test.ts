import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileHeater, stepHeater } from '../../../../packages/sim-core/src/physics/backup/heater.ts';
import {
  heatWater,
  hotShare,
  keepWarm,
  settleMixing,
} from '../../../../packages/sim-core/src/physics/backup/supply.ts';
import { plainInput } from '../../../examples.ts';

const heater = (own: object) => compileHeater(defineSystem({ ...plainInput, heater: own } as SystemInput).heater);
const MINUTES = 600;

describe('water for the taps from a store', () => {
  it('half hot at 60, half cold at 10 °C make 35 °C; water no hotter than wanted comes unmixed [by hand]', () => {
    expect(hotShare(35, 10, 60)).toBe(0.5);
    expect(hotShare(60, 10, 60)).toBe(1);
    expect(hotShare(5, 10, 60)).toBe(0);
  });

  // 150 L of 60 °C without a burner's help; a third of that is wanted mixed in one step.
  it('the share is that of the mean outlet that it brings [definition; to 0.005 of share]', () => {
    const store = { ...heater({ kind: 'stored-gas', volume: 0.15 }), most: 0 };
    const share = settleMixing(store, 10, { wanted: 0.05, mains: 10, target: 40, flow: 1e-4, duration: MINUTES });
    expect(store.temperature).toBe(60); // as before the trials
    expect(share).toBeGreaterThan(hotShare(40, 10, 60) + 0.03);
    stepHeater(store, 0.05 * share, 10, MINUTES);
    expect(Math.abs(share - hotShare(40, 10, store.outlet))).toBeLessThan(0.005);
  });

  it('drawing and waiting are steps of the store itself [same bits]', () => {
    const [drawn, waiting, reference] = [1, 2, 3].map(() => heater({ kind: 'stored-gas', volume: 0.15 }));
    heatWater(drawn!, 0.02, 15, 1e-4, MINUTES);
    stepHeater(reference!, 0.02, 15, MINUTES);
    expect(drawn).toEqual(reference);
    keepWarm(waiting!, MINUTES);
    expect(waiting!.loss).toBeGreaterThan(0);
    const flowing = heater({ kind: 'instantaneous-gas', burnerPower: 20_000 });
    keepWarm(flowing, MINUTES);
    expect(flowing.loss).toBe(0);
  });

  it('electricity needs the mains, gas without a standby draw does not [definition]', () => {
    expect(heater({ kind: 'stored-electric', volume: 0.15 }).needsMains).toBe(true);
    expect(heater({ kind: 'stored-gas', volume: 0.15, standbyPower: 0 }).needsMains).toBe(false);
    expect(heater({ kind: 'stored-gas', volume: 0.15, standbyPower: 3 }).needsMains).toBe(true);
    expect(heater({ kind: 'instantaneous-gas', burnerPower: 20_000 }).instantaneous).toBe(true);
    expect(heater({ kind: 'stored-gas', volume: 0.15 }).instantaneous).toBe(false);
  });
});

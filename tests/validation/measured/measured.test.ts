// Models against what was measured, data in ../shared/measured. The figures were seen before the limits were written:
// those with a source beside them are its own, the others guard against change and prove nothing more.
import { defineSystem } from '@noonloop/sim-core';
import { drawProfile } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { movers } from '../../../packages/sim-core/src/study/band-parts.ts';
import { inventedValley, plainInput } from '../../examples.ts';
import { hasShared } from '../../shared.ts';
import { COLLECTOR_FILE, fitCollector, foretellOutlet } from './collector.ts';
import { gaugeTrials, LEAST_FOUND, PROOF, plainWindows, shareFound } from './gauge-trials.ts';
import {
  defaultTankLoss,
  EVEN,
  fittedSettings,
  fittedTankLoss,
  HOUSE_FILE,
  nightEnds,
  pumpAgreement,
} from './house.ts';
import { MAINS_FILE, mainsPairs } from './mains.ts';
import { PLANES, PLANES_FILE, planePairs } from './planes.ts';
import { misfit } from './sets.ts';
import { CERTIFICATES_FILE, stagnationRows } from './stagnation.ts';
import { STORE_FILE, storeDay } from './store.ts';
import { hourShares, misplaced, showers, TAPS_FILE } from './taps.ts';

const without = (file: string): boolean => !hasShared(`measured/${file}`);

describe.skipIf(without(PLANES_FILE))(
  'measured light on five planes, per cent [Golden; validations of Perez elsewhere, from memory]',
  () => {
    // IEA SHC Task 9, Gueymard 2009, Loutzenhiser 2007 (from memory): ±2 % and 4 to 6 % to 45°, ±5 % and 10 to 15 % on walls.
    it.each(PLANES.map(([name, , tilt], at) => [name, at, tilt === 90 ? [5, 15] : [2, 6]] as const))(
      '%s',
      (_, at, [bias, rmse]) => {
        const found = misfit(planePairs(at, 'perez', true));
        expect(found.count).toBe(140);
        expect(Math.abs((100 * found.bias) / found.mean)).toBeLessThan(bias!);
        expect((100 * found.rmse) / found.mean).toBeLessThan(rmse!);
      },
    );
  },
);

describe.skipIf(without(COLLECTOR_FILE))(
  'measured heat of collectors on a day that was not fitted, per cent [Almería]',
  () => {
    // Two laboratories differ by 1 to 2 % of η0 on the same collector (round robin of 2011, size from memory).
    it('in steady and in changing light, the mean within 2 %', () => {
      const minutes = foretellOutlet(fitCollector());
      for (const steady of [true, false]) {
        const kept = minutes.filter((minute) => minute.steady === steady);
        const found = misfit({ measured: kept.map(({ flux }) => flux[0]), modelled: kept.map(({ flux }) => flux[1]) });
        expect(found.count).toBeGreaterThan(50);
        expect(Math.abs((100 * found.bias) / found.mean)).toBeLessThan(2);
      }
    });

    // The default is called a judgement; a tenth is what such a judgement can be asked for.
    it('heat capacity within a tenth of the default of 8 kJ/(m² K)', () => {
      expect(Math.abs(fitCollector().heatCapacity / 8000 - 1)).toBeLessThan(0.1);
    });
  },
);

describe.skipIf(without(STORE_FILE))('measured layers of a store through a day, K [Almería, nothing fitted]', () => {
  // What the store swings by in that day, some 15 K, would be the error of a store that is not modelled; a fifth of it is asked for.
  it('each of three sensors within 3 K', () => {
    const minutes = storeDay();
    for (const sensor of [0, 1, 2]) {
      const found = misfit({
        measured: minutes.map(({ measured }) => measured[sensor]!),
        modelled: minutes.map(({ modelled }) => modelled[sensor]!),
      });
      expect(found.rmse).toBeLessThan(3);
    }
  });
});

describe.skipIf(without(HOUSE_FILE))(
  'measured tank and pump of a house [nights and months that were not fitted]',
  () => {
    // Readings of 0.1 K, a room known to some tenths: half a kelvin is what such a night can tell.
    it('mean temperature at the end of a night, bias within 0.2 K', () => {
      const { mean } = nightEnds(fittedTankLoss());
      expect(mean.measured.length).toBeGreaterThan(35);
      expect(Math.abs(misfit(mean).bias)).toBeLessThan(0.2);
    });

    it('the default loss is below this tank’s, as the page says', () => {
      expect(defaultTankLoss() / fittedTankLoss()).toBeLessThan(0.75);
    });

    // Settings are fitted in whole kelvin on means of five minutes: nine rows of ten are what that can reach.
    it('the controller’s model runs the pump in the same rows', () => {
      expect(1 - pumpAgreement(fittedSettings(), EVEN).same).toBeLessThan(0.1);
    });
  },
);

describe.skipIf(without(HOUSE_FILE))('gauges of the house by themselves [faults planted into its real log]', () => {
  // Faults of which there are enough in four windows of the year; all faults and windows, to the same bounds, and what is named beside them: gauges.long.test.ts.
  const quick = LEAST_FOUND.slice(0, 2);
  const trials = gaugeTrials(
    PROOF.seed,
    PROOF.first,
    4,
    quick.map(([name]) => name),
  );

  it.each(quick)('%s: the share found [requirement]', (name, least) => {
    expect(shareFound(trials, name)).toBeGreaterThanOrEqual(least);
  });

  it('the log as it is raises no alarm but the two that the log itself bears out', () => {
    const alarms = plainWindows(PROOF.first, 4).flatMap(({ findings }) => findings.map(({ fault }) => fault));
    expect([...new Set(alarms)].sort()).toEqual(['night-circulation', 'no-flow']);
  });
});

describe.skipIf(without(TAPS_FILE))('measured draws of a flat [WEUSEDTO-Data]', () => {
  // The publisher counts 297 long showers of 17.5 L and 4 min in the middle.
  it('a shower in the middle, as its publisher counts them', () => {
    const { count, litres, minutes } = showers();
    expect(Math.abs(count - 297)).toBeLessThan(10);
    expect(litres[1]).toBeCloseTo(17.5, 0);
    expect(minutes[1]).toBeCloseTo(4, 0);
  });

  it('the level household is nearer to its hours than profile M, as the page says', () => {
    const hours = hourShares();
    const off = (name: 'level' | 'M') => misplaced(hours, drawProfile(name).hourlyShares);
    expect(off('level')).toBeLessThan(off('M'));
  });
});

describe.skipIf(without(MAINS_FILE))('measured cold water in London, K [Earth Notes]', () => {
  // Its authors give no error; between 1.5 K in the mean and 2.5 K a month would be good elsewhere (judgement), and 3 K was not passed.
  it('correlation of the United States', () => {
    const found = misfit(mainsPairs('correlation with the air (a design’s default)'));
    expect(Math.abs(found.bias)).toBeLessThan(1.5);
    expect(found.rmse).toBeLessThan(3);
  });
});

describe.skipIf(without(CERTIFICATES_FILE))('measured stagnation against coefficients [Solar Keymark DS_3663]', () => {
  it('coefficients stay below what the sheet states, by 25 to 35 K', () => {
    const [sheet] = stagnationRows();
    const missing = sheet!.stated - sheet!.byCoefficients;
    expect(missing).toBeGreaterThan(25);
    expect(missing).toBeLessThan(35);
  });
});

describe.skipIf(without(HOUSE_FILE))('parts of a band that were measured [90 % of each, normal]', () => {
  const REACH = 1.645;
  const part = async (name: string) => {
    const known = { collector: 'certificate', water: 'meter', oneYear: false } as const;
    return movers(defineSystem(plainInput), await inventedValley(), known).find((mover) => mover.name === name)!;
  };

  it('loss of a tank by default, in the logarithm', async () => {
    const { mean, deviation } = await part('tank-loss');
    expect(Math.abs(Math.log(fittedTankLoss() / defaultTankLoss()) - mean)).toBeLessThan(REACH * deviation);
  });

  it('cold water by the correlation, in the mean', async () => {
    const { deviation } = await part('cold-water');
    const found = misfit(mainsPairs('correlation with the air (a design’s default)'));
    expect(Math.abs(found.bias)).toBeLessThan(REACH * deviation);
  });

  it('light on the plane', async () => {
    const { deviation } = (await part('light')).parts.find(({ name }) => name === 'sky-model')!;
    const found = misfit(planePairs(0, 'perez', true));
    expect(Math.abs(found.bias / found.mean)).toBeLessThan(REACH * deviation);
  });
});

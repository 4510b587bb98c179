import { type Caution, type CautionCode, cautions } from '@noonloop/reports';
import { defineSystem, type RunColumns, type RunResult, type SystemDesign } from '@noonloop/sim-core';
import { stagnationTemperature, steamReach } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { CAUTION_WORDS } from '../../packages/reports/src/words/cautions.ts';
import { plainInput } from '../examples.ts';
import { fixture } from './fixture.ts';

const codes = (list: readonly Caution[]): string[] => list.map(({ code }) => code);
const of = (list: readonly Caution[], code: CautionCode): Caution | undefined => list.find((one) => one.code === code);
const value = (caution: Caution | undefined, name: string): number => {
  const fact = caution?.facts[name];
  if (typeof fact !== 'object') throw new Error(`no number ${name}`);
  return fact.value;
};
const ALWAYS = ['roof', 'trades', 'flue', 'steam', 'bonding', 'backflow', 'hydrogen'];

type Parts = { readonly [Part in keyof SystemDesign]?: Partial<SystemDesign[Part]> };
/** The run with parts of its design changed. */
const having = (run: RunResult, parts: Parts): RunResult => ({
  ...run,
  design: Object.fromEntries(
    Object.entries(run.design).map(([key, part]) => {
      const change = parts[key as keyof SystemDesign];
      return [key, change === undefined ? part : { ...(part as object), ...(change as object) }];
    }),
  ) as unknown as SystemDesign,
});
/** The run with a column filled from one hour to before another. */
const filled = (run: RunResult, column: keyof RunColumns, fill: number, from = 0, to = 8760): RunResult => {
  run.columns[column].fill(fill, from, to);
  return run;
};

/** An absorber that stands in the sun at noon of one day, and is cool else. */
function standing(peak: number): RunResult {
  const run = filled(filled(fixture(), 'absorberTemperature', 60), 'absorberTemperature', peak, 4500, 4501);
  run.columns.pumpRunning.fill(0, 4500, 4501);
  return run;
}

describe('what coefficients leave out', () => {
  const limited = (run: RunResult, stagnation?: number): Caution | undefined => {
    const { array } = run.design;
    const collector = { ...array.collector, ...(stagnation ? { stagnationTemperature: stagnation } : {}) };
    return of(cautions(having(run, { array: { collector }, loop: { fluidLimit: 120 } })), 'fluid-limit');
  };

  // A standing absorber at 112 °C by coefficients whose root is t: by similar rises over air of 30 °C a real one is at 30 + 82 (t + 30 − 30)/(t − 30).
  it('a standing absorber that a margin of 30 K carries over the limit is told of, one far below is not [by hand]', () => {
    const { area, eta0, a1, a2 } = fixture().design.array.collector;
    const root = stagnationTemperature({ area, eta0, a1, a2 }, 1000, 30);
    const near = limited(standing(112))!;
    expect(near.severity).toBe('note');
    expect(value(near, 'could')).toBeCloseTo(30 + (82 * root) / (root - 30), 9);
    expect(limited(standing(90))).toBeUndefined();
    expect(limited(standing(125))!.severity).toBe('warning');
  });

  it('a sheet’s own value goes before the margin [requirement]', () => {
    const { area, eta0, a1, a2 } = fixture().design.array.collector;
    const root = stagnationTemperature({ area, eta0, a1, a2 }, 1000, 30);
    expect(limited(standing(112), root)).toBeUndefined();
    expect(value(limited(standing(112), root + 50), 'could')).toBeCloseTo(30 + (82 * (root + 20)) / (root - 30), 9);
  });

  it('the vessel does not hang on it: standing collectors are reckoned full of steam whatever their losses [definition]', () => {
    const { loop, coil, array } = fixture().design;
    const cool = { ...array, collector: { ...array.collector, a1: 3 * array.collector.a1 } };
    expect(steamReach({ loop, coil, array: cool }, 101_325)).toEqual(steamReach({ loop, coil, array }, 101_325));
  });
});

describe('cold water by the correlation of the United States', () => {
  const at = (latitude: number, longitude: number, mains: SystemDesign['draw']['mains'] = 'from-weather') => {
    const run = having(fixture(), { draw: { mains } });
    return of(cautions({ ...run, site: { ...run.site, latitude, longitude } }), 'mains-elsewhere');
  };

  it('is told of elsewhere, with field names, and not where values are given [requirement]', () => {
    expect(at(39.7, -105.2)).toBeUndefined();
    expect(at(51.4, -0.3)!.advice).toMatch(/draw\.mains: twelve monthly values .* mean: 12, swing: 12/);
    expect(at(-33.9, 18.4)!.source).toContain('Burch & Christensen 2007');
    expect(at(51.4, -0.3, { mean: 12, swing: 12 })).toBeUndefined();
    expect(at(51.4, -0.3, 10)).toBeUndefined();
  });
});

describe('cautions', () => {
  it('always end with roof, trades, flue, steam, bonding, backflow and hydrogen [common practice]', () => {
    expect(codes(cautions(fixture())).slice(-7)).toEqual(ALWAYS);
    expect(codes(cautions(having(fixture(), { heater: { carrier: 'electricity' } })))).not.toContain('flue');
  });

  it('say the number behind each, in both units: 2 × 2.4 m² at 15 to 30 kg/m² are 72 to 144 kg [by hand]', () => {
    const roof = of(cautions(fixture()), 'roof')!;
    expect([value(roof, 'least'), value(roof, 'most'), value(roof, 'area')]).toEqual([72, 144, 4.8]);
    expect(roof.finding).toContain('72 kg to 144 kg');
    expect(roof.source).toContain('15 kg/m² to 30 kg/m²');
    const us = of(cautions(fixture(), 'us'), 'roof')!;
    expect(us.finding).toContain('159 lb to 317 lb'); // 72 / 0.45359237 and 144 / 0.45359237
    expect(us.source).toContain('3.1 lb/ft² to 6.1 lb/ft²'); // 15 and 30 kg/m² / 0.45359237 × 0.3048²
    const hot = filled(fixture(), 'absorberTemperature', 171.4, 4000, 4001);
    expect(of(cautions(hot), 'steam')!.finding).toContain('171 °C');
    // A sheet's stated value goes before the coefficients; without it 30 K are added to their root (the closed form of ISO 9806).
    const { area, eta0, a1, a2 } = hot.design.array.collector;
    expect(value(of(cautions(hot), 'steam')!, 'dry')).toBeCloseTo(
      stagnationTemperature({ area, eta0, a1, a2 }, 1000, 30) + 30,
      6,
    );
    const { array } = hot.design;
    const stated = {
      ...hot,
      design: { ...hot.design, array: { ...array, collector: { ...array.collector, stagnationTemperature: 189.4 } } },
    };
    expect(of(cautions(stated), 'steam')!.advice).toContain('must stand 189 °C, as its papers state');
    const electric = having(hot, { heater: { carrier: 'electricity', burnerPower: 3000 } });
    expect(of(cautions(electric, 'us'), 'trades')!.finding).toMatch(/3(\.0)? kW/);
  });

  it('name who may act and the source of the limit on each [requirement]', () => {
    for (const { code, who, source, advice } of cautions(fixture({ panels: 4, mixingValve: false }))) {
      expect(who.length, code).toBeGreaterThan(3);
      expect(source.length, code).toBeGreaterThan(8);
      expect(advice, code).toMatch(/local code/);
    }
  });
});

describe('scald', () => {
  it('counts hours of use above 120 °F only where water is drawn [CPSC document 5098]', () => {
    const run = fixture({ mixingValve: false });
    const hours = run.columns.tapVolume.filter(
      (volume, hour) => volume > 0 && run.columns.tapTemperature[hour]! > 440 / 9,
    ).length;
    const scald = of(cautions(run), 'scald')!;
    expect(scald.severity).toBe('danger');
    expect(value(scald, 'hours')).toBe(hours);
    expect(of(cautions(fixture()), 'scald')).toBeUndefined();
    expect(of(cautions(run, 'us'), 'scald')!.finding).toContain('above 120 °F');
  });

  it('says how soon a burn comes, by one table: 5 minutes at 120, 30 s at 130, 5 s at 140 °F [CPSC document 5098; Moritz & Henriques 1947]', () => {
    const at = (fahrenheit: number): string =>
      of(cautions(filled(fixture(), 'tapTemperature', (fahrenheit - 32) / 1.8)), 'scald')!.advice;
    expect(at(121)).toMatch(/in [34] minutes/);
    expect(at(130)).toContain('in 30 seconds');
    expect(at(140)).toContain('in 5 seconds');
  });

  it('speaks of the valve’s own setting and what it lets through, never of what the taps want [EN 1111: ± 2 K, from memory]', () => {
    const run = filled(
      having(fixture(), { draw: { valveTemperature: 48, valveAccuracy: 2, tapTemperature: 45 } }),
      'tapTemperature',
      50,
    );
    const { advice } = of(cautions(run), 'scald')!;
    expect(advice).toContain('The mixing valve is set to 48 °C and may let 2 K more through: set it to 47 °C or lower');
    expect(advice).not.toContain('45 °C');
  });

  it('names the rise that the valve needs where it cannot hold its setting, also at 135 °F [data sheets, no source]', () => {
    // Valve at 118 °F that needs 18 °F more: below 136 °F it does not control.
    for (const heater of [125, 130, 135]) {
      const run = having(fixture(), {
        draw: { valveTemperature: 430 / 9, valveAccuracy: 2, valveMinimumDifference: 10, tapTemperature: 415 / 9 },
      });
      const found = of(cautions(filled(run, 'tapTemperature', (heater - 32) / 1.8), 'us'), 'scald')!;
      expect(found.finding).toContain(`can reach ${heater} °F`);
      expect(found.advice).toContain('its setting of 118 °F only where the hot water is 18 °F hotter, from 136 °F on');
      expect(found.advice).toContain('Set it to 102 °F or lower');
      expect(found.advice).not.toContain('115 °F');
    }
  });

  it('has a valve fitted where there is none [ASSE 1017]', () => {
    const { advice } = of(cautions(fixture({ mixingValve: false })), 'scald')!;
    expect(advice).toMatch(/have one fitted after the heater .*ASSE 1017/);
  });
});

describe('legionella', () => {
  it('fits the valve first and raises the setting then: above 120 °F it scalds [CPSC; ASSE 1017]', () => {
    const bare = of(cautions(fixture({ heaterSetTemperature: 49, mixingValve: false }), 'us'), 'heater-setting')!;
    expect(bare.severity).toBe('warning');
    expect(bare.advice).toMatch(
      /leave it at 120 °F or below.*First have a valve fitted .*ASSE 1017.*only then raise the setting to 140 °F/,
    );
    expect(bare.advice).not.toMatch(/mix down/);
    const mixed = of(cautions(fixture({ heaterSetTemperature: 55 })), 'heater-setting')!;
    expect(mixed.advice).toMatch(/test that it does, then raise the setting to 60 °C/);
    expect(of(cautions(having(fixture(), { heater: { setTemperature: 44 } })), 'heater-setting')).toMatchObject({
      severity: 'danger',
    });
    expect(of(cautions(fixture({ heaterSetTemperature: 60 })), 'heater-setting')).toBeUndefined();
  });

  it('counts hours with the tank mean from 20 to 45 °C [HSG274 part 2]', () => {
    const run = fixture();
    const hours = run.columns.tankMeanTemperature.filter((one) => one >= 20 && one <= 45).length;
    expect(value(of(cautions(run), 'lukewarm-tank'), 'hours')).toBe(hours);
    expect(of(cautions(run), 'lukewarm-tank')!.advice).toContain(
      'the heater after it must keep all drawn water at 60 °C',
    );
  });

  it('never says that a flow-through heater disinfects, and counts what passes it unheated [90 % at 60 °C take 2 minutes]', () => {
    const run = having(fixture(), { heater: { kind: 'instantaneous-gas' } });
    filled(filled(run, 'unfiredVolume', 18 / 8760), 'undisinfectedVolume', 20 / 8760);
    const { advice, finding } = of(cautions(run), 'lukewarm-tank')!;
    expect(advice).toMatch(/disinfects nothing in those seconds: at 60 °C it takes 2 minutes/);
    expect(advice).not.toMatch(/must (bring|keep)/);
    expect(finding).toContain('18 m³ of');
    expect(codes(cautions(run))).not.toContain('cool-water');
  });

  it('says of a store that cannot keep 60 °C how much leaves it cooler, from a tenth on [judgement]', () => {
    const run = fixture();
    const whole = run.columns.hotVolume.reduce((sum, one) => sum + one, 0);
    expect(codes(cautions(filled(run, 'undisinfectedVolume', (0.09 * whole) / 8760)))).not.toContain('cool-water');
    expect(
      value(of(cautions(filled(run, 'undisinfectedVolume', (0.11 * whole) / 8760)), 'cool-water'), 'volume'),
    ).toBeCloseTo(0.11 * whole, 9);
  });

  it('asks for a lower least power where a flow-through heater does not fire: a larger one is worse [requirement]', () => {
    const short = (run: RunResult): RunResult => {
      for (let hour = 19; hour < 8760; hour += 24) {
        const missing = 0.1 * run.columns.tapHeat[hour]!;
        run.columns.tapHeat[hour]! -= missing;
        run.columns.unfiredShortfall[hour] = run.design.heater.kind === 'instantaneous-gas' ? missing : 0;
      }
      return run;
    };
    expect(of(cautions(fixture()), 'shortfall')).toBeUndefined(); // a few hours, too little to feel
    const stored = of(cautions(short(fixture())), 'shortfall')!;
    expect(value(stored, 'hours')).toBe(365);
    expect(stored.advice).toContain('A larger heater');
    const unfired = of(cautions(short(having(fixture(), { heater: { kind: 'instantaneous-gas' } }))), 'shortfall')!;
    expect(unfired.advice).toMatch(/lower least power.*A larger one would make it worse/);
  });
});

/** A run whose notice says that water was drawn while season or timer kept the heater off. */
const withHeaterOff = (offDays: readonly string[]): RunResult => {
  const facts = {
    missing: { value: 3.6e9, unit: 'J' },
    cool: { value: 11, unit: 'm³' },
    hot: { value: 14, unit: 'm³' },
  };
  const run = having(fixture(), { heater: { offDays } });
  return { ...run, notices: [{ code: 'heater-off', facts, hours: 918 }] };
};

describe('a heater that is off for a season or by a timer', () => {
  it('is a caution with its numbers, who asks the local code, and what to do before the water is used again [requirement]', () => {
    expect(codes(cautions(fixture()))).not.toContain('heater-off');
    const { finding, advice } = of(cautions(withHeaterOff(['05-01..09-30'])), 'heater-off')!;
    expect(finding).toContain('918 h ');
    expect(finding).toMatch(/14 m³, of which 11 m³ leave it below 60 °C; the taps lack 1,?000 kWh/);
    expect(advice).toMatch(/local code.*do not breathe the spray/);
    expect(of(cautions(withHeaterOff([])), 'heater-off')!.advice).toContain('once a day');
  });
});

const INSULATED = { insulationThickness: 0.02, insulationConductivity: 0.035, surroundings: 20 };
const RING = {
  ...INSULATED,
  length: 60,
  outerDiameter: 0.028,
  innerDiameter: 0.0256,
  flow: 8e-6,
  hours: [[6, 22]] as const,
  pumpPower: 10,
};
const withRing = (ring: SystemDesign['draw']['ring']): RunResult => having(fixture(), { draw: { ring } });
const withLongPipe = (innerDiameter: number): RunResult =>
  having(fixture(), {
    draw: { hotPipe: { ...INSULATED, length: 12, outerDiameter: innerDiameter + 0.002, innerDiameter } },
  });

describe('pipes of hot water', () => {
  it('a ring that comes back below 50 °C, or rests, is a caution; one that does neither is none [HSE HSG274]', () => {
    const found = of(cautions(withRing(RING)), 'ring-lukewarm')!;
    expect(value(found, 'returned')).toBeLessThan(50);
    expect(found.finding).toContain('rests for hours');
    const kept = { ...RING, flow: 5e-5, hours: [[0, 24]] as const };
    expect(codes(cautions(withRing(kept)))).not.toContain('ring-lukewarm');
    expect(of(cautions(withRing({ ...kept, hours: RING.hours })), 'ring-lukewarm')!.finding).not.toContain('below 50');
  });

  it('more than 3 L in the pipe to the taps are a caution: 12 m of 20 mm hold 3.8, of 16 mm 2.4 L [by hand; DVGW W 551]', () => {
    expect(value(of(cautions(withLongPipe(0.02)), 'long-pipe'), 'content')).toBeCloseTo(0.00377, 5);
    expect(codes(cautions(withLongPipe(0.016)))).not.toContain('long-pipe');
  });
});

describe('what is hot, cold or full', () => {
  it('warns of a tank above 93 °C and above its rating, and of relief, with litres [Chicago code, ANSI Z21.22]', () => {
    const run = fixture();
    expect(codes(cautions(run))).not.toContain('hot-tank');
    filled(run, 'tankMaximumTemperature', 94, 10, 15);
    filled(run, 'reliefVolume', 0.0123, 12, 13);
    const list = cautions(run);
    expect(value(of(list, 'hot-tank'), 'hours')).toBe(5);
    expect(of(list, 'hot-tank')!.finding).toContain('reaches 94 °C (1 January, 10 am)');
    expect(value(of(list, 'tank-rating'), 'hours')).toBe(5); // rated 85 °C in the fixture
    expect(of(list, 'relief')!.finding).toContain('lets out 12 L');
  });

  it('says how much the tank’s water swells: 300 L from 15 to 85 °C by 9.4 L [density of water; IPC 607.3]', () => {
    const run = filled(filled(fixture(), 'mainsTemperature', 15), 'tankMaximumTemperature', 85);
    const swell = of(cautions(run), 'tank-swell')!;
    expect(value(swell, 'swell') * 1000).toBeCloseTo(9.4, 1);
    expect(swell.advice).toMatch(/check valve, pressure reducer or backflow preventer/);
  });

  it('calls water that freezes in the tank a danger [water swells by 9 %, handbook]', () => {
    expect(codes(cautions(fixture()))).not.toContain('tank-ice');
    expect(of(cautions(filled(fixture(), 'tankBottomTemperature', -2.8, 100, 170)), 'tank-ice')).toMatchObject({
      severity: 'danger',
    });
  });

  it('counts hours of use with more than 60 °C into the heater behind, and names plastic pipe [makers’ papers; ASTM F876, from memory]', () => {
    const run = filled(fixture(), 'tankTopTemperature', 50);
    expect(codes(cautions(run))).not.toContain('hot-inlet');
    filled(run, 'tankTopTemperature', 84, 4000, 4048);
    const hours = run.columns.hotVolume.subarray(4000, 4048).filter((volume) => volume > 0).length;
    const inlet = of(cautions(run), 'hot-inlet')!;
    expect(value(inlet, 'hours')).toBe(hours);
    expect(inlet.advice).toMatch(/which inlet they permit.*Plastic pipe bears 82 °C/);
    expect(codes(cautions(having(run, { heater: { kind: 'element' } })))).not.toContain('hot-inlet');
  });

  it('names hydrogen as a caution from two weeks without a draw [water heaters’ manuals]', () => {
    expect(of(cautions(fixture()), 'hydrogen')).toMatchObject({ severity: 'note', finding: '' });
    const away = filled(fixture(), 'tapVolume', 0, 24 * 200, 24 * 215);
    expect(of(cautions(away), 'hydrogen')).toMatchObject({ severity: 'warning' });
    expect(of(cautions(away), 'hydrogen')!.finding).toContain('15 days');
  });
});

describe('the loop', () => {
  it('counts hours above the limit of the fluid, 140 °C in the fixture [design]', () => {
    const run = filled(fixture(), 'absorberTemperature', 150, 4000, 4003);
    expect(value(of(cautions(run), 'fluid-limit'), 'hours')).toBe(3);
    expect(of(cautions(run), 'fluid-limit')!.advice).toContain('pH');
  });

  it('always says how far the fluid is from freezing; warns from 5 K on, a danger below [common practice: 3 to 5 K]', () => {
    const run = fixture(); // freezes at −21.4 °C
    const safe = of(cautions(run), 'freezing')!;
    expect(safe.severity).toBe('note');
    expect(safe.finding).toMatch(/falls to −\d+ °C \(.*\)\. The fluid freezes at −21 °C: \d+ K to spare\./);
    expect(of(cautions(run, 'us'), 'freezing')!.finding).toMatch(/\d+ °F to spare/);
    filled(run, 'absorberMinimumTemperature', -17, 50, 51);
    const near = of(cautions(run), 'freezing')!;
    expect(near.severity).toBe('warning');
    expect(value(near, 'margin')).toBeCloseTo(4.4, 10);
    filled(run, 'absorberMinimumTemperature', -25, 50, 51);
    const frozen = of(cautions(run), 'freezing')!;
    expect(frozen.severity).toBe('danger');
    expect(value(frozen, 'hours')).toBe(1);
  });

  it('takes the freezing point of each hour, names the day when thinned glycol protects no more, looks at pipes [definition]', () => {
    const run = fixture();
    run.columns.freezingPoint.fill(-3, 8000);
    run.columns.absorberMinimumTemperature.fill(2, 8000);
    run.columns.pipeMinimumTemperature.fill(2, 8000);
    run.columns.pipeMinimumTemperature[8500] = -4;
    const thin = { ...run, loop: { ...run.loop, protectionEnds: 7000, burstHours: 2 } };
    const found = of(cautions(thin), 'freezing')!;
    expect(found).toMatchObject({ severity: 'danger' });
    expect(found.finding).toMatch(/outdoor pipe falls to −4 °C \(21 December, 4 am\)\. The fluid freezes at −3 °C/);
    expect(found.finding).toContain('from 19 October, 4 pm on it would freeze');
    expect(found.finding).toContain('In 2 h it is below the point');
  });

  it('warns of thinned glycol with both strengths [judgement: half a percent by mass]', () => {
    const run = fixture();
    expect(of(cautions(run), 'glycol-thinned')).toBeUndefined();
    expect(value(of(cautions(filled(run, 'glycolMassFraction', 0.2, 5000)), 'glycol-thinned'), 'left')).toBe(0.2);
  });

  it('counts fluid let out by the loop, hours without pressure, hours of boiling [definition]', () => {
    const run = fixture();
    for (const code of ['loop-relief', 'loop-pressure-low', 'boiling'])
      expect(codes(cautions(run))).not.toContain(code);
    run.columns.loopReliefVolume[4000] = 0.0008;
    run.columns.lowPressure.fill(0.5, 4100, 4103);
    run.columns.boiling.fill(0.25, 4020, 4030);
    const list = cautions({ ...run, loop: { ...run.loop, circulationFails: 4100, highestPressure: 4.8e5 } });
    expect(of(list, 'loop-relief')).toMatchObject({ severity: 'danger' });
    expect(of(list, 'loop-relief')!.finding).toContain('0.8 L of fluid');
    expect(value(of(list, 'loop-pressure-low'), 'hours')).toBe(1.5);
    expect(of(list, 'loop-pressure-low')!.finding).toContain('first on 20 June, 8 pm');
    expect(value(of(list, 'boiling'), 'hours')).toBe(2.5);
    expect(of(list, 'boiling')!.finding).toMatch(/on 1 day, for \d h in all; the gauge rises to 4\.8 bar/);
  });

  it('fills up with mixture of the same strength and lets air out cold, by the trade [requirement]', () => {
    const { advice, who } = of(cautions(filled(fixture(), 'lowPressure', 0.5, 4100, 4103)), 'loop-pressure-low')!;
    expect(advice).toMatch(/mixture of the same strength, not with water.*done cold/);
    expect(who).toMatch(/trained for solar loops/);
  });

  it('warns of 81.6 of 87.0 psi: nearer to the relief valve than a tenth, nothing let out [EN 12828, from memory]', () => {
    const run = having(fixture(), { loop: { reliefPressure: 6e5 } });
    filled(run, 'loopMaximumPressure', 81.6 * 6894.757, 4000, 4001);
    const near = of(cautions(run, 'us'), 'loop-pressure-high')!;
    expect(near.short).toBe('the loop’s pressure reaches 82 psi of 87 psi');
    expect(near.advice).toContain('below 78 psi');
    expect(codes(cautions(filled(run, 'loopMaximumPressure', 5.39e5, 4000, 4001)))).not.toContain('loop-pressure-high');
    const lower = having(run, { loop: { reliefPressure: 3e5 } }); // half a bar below 3 bar
    const small = { ...lower, loop: { ...lower.loop, steam: steamReach(lower.design, 101_325) } };
    expect(codes(cautions(filled(small, 'loopMaximumPressure', 2.51e5, 4000, 4001)))).toContain('loop-pressure-high');
    expect(codes(cautions(filled(small, 'loopMaximumPressure', 2.49e5, 4000, 4001)))).not.toContain(
      'loop-pressure-high',
    );
  });

  it('says that a vessel is too small, and that steam gets to the pump [EN 12828; IEA SHC Task 26, from memory]', () => {
    const run = fixture();
    const { steam } = run.loop;
    const as = (parts: Partial<typeof steam>, longestSteam = 0): Caution[] =>
      cautions({ ...run, loop: { ...run.loop, longestSteam, steam: { ...steam, ...parts } } });
    expect(codes(as({ vessel: 0.02, vesselNeeded: 0.018, length: 10, pipeLength: 20 }))).not.toContain('vessel-small');
    const small = as({ vessel: 0.0019, vesselNeeded: 0.018, vesselSold: 0.018, length: 10, pipeLength: 20 });
    expect(of(small, 'vessel-small')!.short).toBe('the expansion vessel holds 1.9 L where 18 L are needed');
    expect(codes(small)).not.toContain('steam-reach');
    expect(of(as({ length: 32, pipeLength: 20, powerLeft: 300 }), 'steam-reach')!.finding).toContain(
      'fills 32 m of pipe; there are 20 m',
    );
    expect(of(as({ length: 10, pipeLength: 20 }, 20), 'steam-reach')!.finding).toContain('In this year');
  });

  it('says that the high limit holds the pump off in sun though stagnation is 0 [requirement]', () => {
    const run = filled(filled(fixture(), 'highLimit', 0), 'stagnation', 0);
    filled(run, 'highLimit', 1, 4000, 4019);
    expect(codes(cautions(run))).not.toContain('held-in-sun');
    filled(run, 'highLimit', 1, 4000, 4257);
    filled(run, 'absorberTemperature', 114, 4100, 4101);
    const held = of(cautions(run), 'held-in-sun')!;
    expect(held.finding).toContain('in 257 h in which it would run; the absorber reaches 114 °C');
    expect(held.advice).toContain('below the stagnation limit of 120 °C');
    filled(run, 'stagnation', 1, 4000, 4050);
    expect(of(cautions(run), 'held-in-sun')!.advice).toContain('for about 50 h');
  });

  it('says what the coil takes back out of the tank from a twentieth on, and calls ethylene glycol poison [judgement; common practice]', () => {
    const run = fixture();
    const brought = run.columns.coilHeat.reduce((sum, one) => sum + one, 0);
    expect(codes(cautions(filled(run, 'heatGivenBack', (0.05 * brought) / 8760)))).not.toContain('heat-given-back');
    expect(
      value(of(cautions(filled(run, 'heatGivenBack', brought / 9 / 8760)), 'heat-given-back'), 'share'),
    ).toBeCloseTo(0.1, 9);
    expect(of(cautions(fixture({ fluid: 'ethylene-glycol' })), 'poisonous-fluid')).toMatchObject({
      severity: 'danger',
    });
  });
});

describe('a coil beside its array', () => {
  // 10 m of 22 mm tube are 0.691 m²; 4.8 m² of panels commonly have 0.96 m², and less than 0.72 m² is called small.
  it('is small below 0.15 m² for each m² of collector, and the caution says by how much it is short of 0.2 [common practice; by hand]', () => {
    const coiled = (length: number) => cautions(having(fixture(), { coil: { length, outerDiameter: 0.022 } }));
    expect(value(of(coiled(10), 'coil-small'), 'short')).toBeCloseTo(0.96 - 0.6912, 4);
    expect(of(coiled(10), 'coil-small')!.finding).toMatch(
      /0\.69 m² of surface; 1 m² are common for these panels, 0\.27 m² more/,
    );
    expect(codes(coiled(11))).not.toContain('coil-small');
  });
});

describe('panels that face away from the sun', () => {
  const at = (azimuth: number, latitude: number, tilt = 40): Caution | undefined =>
    of(cautions(having(fixture({ latitude }), { array: { azimuth, tilt } })), 'array-away');
  it('are named on either hemisphere, not in the tropics and not lying flat [geometry]', () => {
    expect(at(0, 40)!.finding).toContain('face north (0° clockwise from north); the sun stands in the south');
    expect(at(180, -35)!.finding).toContain('face south (180° clockwise from north); the sun stands in the north');
    expect(at(350, 40)).toBeDefined();
    expect(at(75, 40)).toBeDefined(); // 105° from the south
    for (const azimuth of [90, 180, 270, 279]) expect(at(azimuth, 40), `${azimuth}`).toBeUndefined();
    for (const azimuth of [0, 90, 359]) expect(at(azimuth, -35), `${azimuth}`).toBeUndefined();
    expect(at(0, 20)).toBeUndefined();
    expect(at(0, 40, 8)).toBeUndefined();
  });
});

describe('all sentences', () => {
  /** Runs that raise everything between them. */
  function everything(): RunResult[] {
    const base = (options = {}): RunResult => {
      const run = fixture({ panels: 4, mixingValve: false, heaterSetTemperature: 50, ...options });
      for (const [column, fill] of [
        ['absorberMinimumTemperature', -25],
        ['pipeMinimumTemperature', -24],
        ['loopReliefVolume', 0.001],
        ['lowPressure', 0.5],
        ['boiling', 0.5],
        ['reliefVolume', 0.01],
        ['tankBottomTemperature', -1],
        ['tankMaximumTemperature', 97],
        ['absorberTemperature', 170],
        ['highLimit', 1],
        ['stagnation', 0.5],
        ['undisinfectedVolume', 1],
        ['unfiredVolume', 1],
        ['heatGivenBack', 1e9],
      ] as const)
        run.columns[column].fill(fill, 4000, 4030);
      run.columns.tapHeat.fill(0, 4000, 4200);
      run.columns.glycolMassFraction.fill(0.1, 8000);
      run.columns.tapVolume.fill(0, 5000, 5400);
      const { steam } = run.loop;
      return {
        ...run,
        loop: {
          ...run.loop,
          burstHours: 2,
          protectionEnds: 7000,
          circulationFails: 4000,
          steam: { ...steam, vessel: 0.001, length: 2 * steam.pipeLength, powerLeft: 400 },
        },
      };
    };
    const water = having(base({ fluid: 'water' }), {
      heater: { kind: 'element', carrier: 'electricity', setTemperature: 60 },
      pump: { drive: 'mains' },
      control: { mode: 'difference' },
      array: { azimuth: 0 },
      loop: { makeUp: true },
    });
    const flowThrough = having(base({ fluid: 'ethylene-glycol', mixingValve: true }), {
      heater: { kind: 'instantaneous-gas', setTemperature: 44 },
      pv: { inSeries: 4 },
    });
    flowThrough.columns.unfiredShortfall.fill(1e9, 4000, 4200);
    flowThrough.columns.tapTemperature.fill(48.95);
    const near = having(fixture(), { draw: { valveTemperature: 48, valveAccuracy: 2 } });
    near.columns.absorberMinimumTemperature.fill(-18, 50, 51);
    near.columns.pipeMinimumTemperature.fill(-19, 60, 61);
    near.columns.tapTemperature.fill(50);
    near.columns.highLimit.fill(1, 4000, 4100);
    near.columns.stagnation.fill(0);
    near.columns.loopMaximumPressure.fill(5.9e5);
    near.columns.loopReliefVolume.fill(0);
    const reached = { ...near, loop: { ...near.loop, longestSteam: 100 } };
    const { array } = reached.design;
    const collector = { ...array.collector, stagnationTemperature: 189.4 };
    const stated = { ...reached, design: { ...reached.design, array: { ...array, collector } } };
    const nearLimit = (stagnation?: number): RunResult =>
      having(standing(112), {
        array: { collector: { ...array.collector, ...(stagnation ? { stagnationTemperature: stagnation } : {}) } },
        loop: { fluidLimit: 120 },
      });
    const limits = [nearLimit(), nearLimit(230)];
    const british = { ...fixture(), site: { ...fixture().site, latitude: 51.4, longitude: -0.3 } };
    const seasons = [withHeaterOff(['05-01..09-30']), withHeaterOff([]), withRing(RING), withLongPipe(0.02)];
    const heat = { heatLeft: 1e8, heatBack: 1e8 };
    const drain = { times: 300, flashes: 2, content: 0.004, ...heat, fillingTime: 3e4, liftedInVain: 0 };
    const emptied = (layout: 'direct' | 'drain-back', frost: number): RunResult => {
      const one = having(fixture(), { loop: { layout, fluid: 'water' } });
      return { ...one, loop: { ...one.loop, drain, absorberFreezingHours: frost, pipeFreezingHours: 0 } };
    };
    const layouts = [emptied('drain-back', 0), emptied('direct', 0), emptied('direct', 3)];
    const { tankMeanTemperature: mean } = near.columns;
    const { design } = near;
    const like = { topTemperature: mean, bottomTemperature: mean, meanTemperature: mean, maximumTemperature: mean };
    const two: RunResult = {
      ...near,
      design: { ...design, tank: defineSystem({ ...plainInput, tank: { volume: 0.1, second: {} } }).tank },
      secondTank: {
        columns: { ...like, loss: mean, coilHeat: mean },
        balance: near.balance.tank,
        peak: 90,
        peakOfFirst: 90,
      },
    };
    return [base(), two, ...layouts, water, flowThrough, stated, fixture(), british, ...limits, ...seasons];
  }
  const all = everything();
  const inUnits = (units: 'metric' | 'us') => all.map((run) => cautions(run, units));
  const said = { metric: inUnits('metric'), us: inUnits('us') };
  const spoken = (units: 'metric' | 'us'): readonly Caution[] => said[units].flat();

  it('are raised, every code of them, with every sentence spoken [completeness]', () => {
    expect(new Set(spoken('metric').map(({ code }) => code))).toEqual(new Set(Object.keys(CAUTION_WORDS)));
    const text = spoken('metric').map(({ finding, advice }) => `${finding} ${advice}`);
    for (const [code, { says }] of Object.entries(CAUTION_WORDS))
      for (const [name, sentence] of Object.entries(says)) {
        const pattern = sentence
          .split(/\{\w+\}/)
          .map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
          .join('.+?');
        expect(
          text.some((one) => new RegExp(pattern).test(one)),
          `${code}: ${name}`,
        ).toBe(true);
      }
  });

  it('are as grave as their table says [completeness]', () => {
    for (const [code, { severity }] of Object.entries(CAUTION_WORDS))
      expect(
        new Set(
          spoken('metric')
            .filter((one) => one.code === code)
            .map((one) => one.severity),
        ).size,
        code,
      ).toBe(severity.length);
  });

  it('have no hole, no metre, no kelvin and no hyphen for a minus in US units [requirement]', () => {
    for (const { code, short, finding, advice, source } of spoken('us')) {
      const words = [short, finding, advice].join(' ');
      expect(words, code).not.toMatch(/[{}]|undefined|NaN|null|Infinity/);
      expect(words, code).not.toMatch(/\d (?:m|m²|m³|L|K|°C|bar|kWh|kg)(?![\w/])/);
      expect(words, code).not.toMatch(/(?:^|\s)-\d/);
      expect(source, code).not.toMatch(/[{}]/);
    }
  });

  it('come most severe first, in both units, and send every reader to the local code [definition]', () => {
    for (const units of ['metric', 'us'] as const)
      for (const list of said[units]) {
        const order = list.map(({ severity }) => ['danger', 'warning', 'note'].indexOf(severity));
        expect(order).toEqual([...order].sort((a, b) => a - b));
        for (const { advice, code } of list) expect(advice, code).toMatch(/local code/);
      }
  });
});

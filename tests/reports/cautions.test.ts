import { type Caution, cautions } from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { fixture } from './fixture.ts';

const codes = (list: readonly Caution[]): string[] => list.map(({ code }) => code);
const of = (list: readonly Caution[], code: string): Caution | undefined => list.find((one) => one.code === code);
const GENERAL = ['roof', 'trades', 'steam'];

describe('cautions', () => {
  it('always ends with roof, trades and steam [common practice]', () => {
    expect(codes(cautions(fixture())).slice(-3)).toEqual(GENERAL);
  });

  it('says the number behind each, in both units: 2 × 2.4 m² at 15 to 30 kg/m² are 72 to 144 kg [by hand]', () => {
    const roof = of(cautions(fixture()), 'roof')!;
    expect(roof.numbers.map(({ value }) => value)).toEqual([72, 144, 4.8]);
    expect(roof.finding).toContain('72 kg to 144 kg');
    expect(roof.source).toContain('15 to 30 kg/m²');
    const us = of(cautions(fixture(), 'us'), 'roof')!;
    expect(us.finding).toContain('159 lb to 317 lb'); // 72 / 0.45359237 and 144 / 0.45359237
    expect(us.source).toContain('3.1 to 6.1 lb/ft²'); // 15 and 30 kg/m² / 0.45359237 × 0.3048²
    const hot = fixture();
    hot.columns.absorberTemperature[4000] = 171.4;
    expect(of(cautions(hot), 'steam')!.finding).toContain('171 °C');
    for (const caution of cautions(hot)) expect(caution.numbers.length, caution.code).toBeGreaterThan(0);
    const heater = { ...hot.design.heater, carrier: 'electricity' as const, burnerPower: 3000 };
    expect(of(cautions({ ...hot, design: { ...hot.design, heater } }, 'us'), 'trades')!.finding).toContain('3.0 kW');
  });

  it('counts hours of use above 49 °C only where water is drawn [US plumbing practice]', () => {
    const run = fixture({ mixingValve: false });
    const hours = run.columns.tapVolume.filter(
      (volume, hour) => volume > 0 && run.columns.tapTemperature[hour]! > 49,
    ).length;
    const scald = of(cautions(run), 'scald')!;
    expect(scald.severity).toBe('danger');
    expect(scald.numbers[0]!.value).toBe(hours);
    expect(scald.finding).toContain('49 °C');
    expect(scald.advice).toContain('within seconds'); // 60 °C: 5 s, Moritz & Henriques 1947
    expect(of(cautions(fixture()), 'scald')).toBeUndefined();
  });

  it('says how soon a burn comes: minutes at 50, half a minute at 56, seconds at 60 °C [Moritz & Henriques 1947]', () => {
    const at = (temperature: number): string => {
      const run = fixture();
      run.columns.tapTemperature.fill(temperature);
      return of(cautions(run), 'scald')!.advice;
    };
    expect(at(50)).toContain('within minutes');
    expect(at(56)).toContain('in under half a minute');
    expect(at(60)).toContain('within seconds');
  });

  it('warns of a tank above 93 °C and above its rating, and of relief, with litres [Chicago code, ANSI Z21.22]', () => {
    const run = fixture();
    expect(codes(cautions(run))).not.toContain('hot-tank');
    run.columns.tankMaximumTemperature.fill(94, 10, 15);
    run.columns.reliefVolume[12] = 0.0123;
    const list = cautions(run);
    expect(of(list, 'hot-tank')!.numbers[0]!.value).toBe(5);
    expect(of(list, 'tank-rating')!.numbers[0]!.value).toBe(5); // rated 85 °C in the fixture
    expect(of(list, 'relief')!.finding).toContain('lets out 12.3 L');
  });

  it('counts hours above the limit of the fluid, 140 °C in the fixture [design]', () => {
    const run = fixture();
    run.columns.absorberTemperature.fill(150, 4000, 4003);
    expect(of(cautions(run), 'fluid-limit')!.numbers[0]!.value).toBe(3);
    expect(of(cautions(run), 'fluid-limit')!.advice).toContain('pH');
  });

  it('warns from 5 K over the freezing point and calls it danger below [common practice: 3 to 5 K]', () => {
    const run = fixture(); // freezes at −21.4 °C
    expect(of(cautions(run), 'freezing')).toBeUndefined();
    run.columns.absorberMinimumTemperature[50] = -17;
    expect(of(cautions(run), 'freezing')).toMatchObject({ severity: 'warning' });
    expect(of(cautions(run), 'freezing')!.numbers[2]).toMatchObject({ label: 'Margin', kind: 'temperatureDifference' });
    expect(of(cautions(run), 'freezing')!.numbers[2]!.value).toBeCloseTo(4.4, 10);
    run.columns.absorberMinimumTemperature[50] = -25;
    expect(of(cautions(run), 'freezing')).toMatchObject({ severity: 'danger' });
    expect(of(cautions(run), 'freezing')!.numbers[3]!.value).toBe(1);
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
    expect(found.finding).toMatch(/An outdoor pipe falls to −4 °C \(21 Dec 04:00\); the fluid freezes at −3 °C/);
    expect(found.finding).toContain('from 19 Oct 16:00 it would freeze');
    expect(found.finding).toContain('bursts no pipe in 2 h');
  });

  it('warns of thinned glycol with both strengths [judgement: half a percent by mass]', () => {
    const run = fixture();
    expect(of(cautions(run), 'glycol-thinned')).toBeUndefined();
    run.columns.glycolMassFraction.fill(0.2, 5000);
    expect(of(cautions(run), 'glycol-thinned')!.numbers[0]!.value).toBe(0.2);
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
    expect(of(list, 'loop-pressure-low')!.numbers[0]!.value).toBe(1.5);
    expect(of(list, 'loop-pressure-low')!.finding).toContain('first on 20 Jun 20:00');
    expect(of(list, 'boiling')!.numbers[0]!.value).toBe(2.5);
    expect(of(list, 'boiling')!.finding).toContain('on 1 day, for 2.5 h in all; the gauge rises to 4.8 bar');
  });

  it('counts hours with the tank mean from 20 to 45 °C and asks for 60 °C after it [HSG274 part 2]', () => {
    const run = fixture();
    const hours = run.columns.tankMeanTemperature.filter((value) => value >= 20 && value <= 45).length;
    expect(of(cautions(run), 'lukewarm-tank')!.numbers[0]!.value).toBe(hours);
    expect(of(cautions(run), 'lukewarm-tank')!.advice).toContain('60 °C');
  });

  it('calls a heater below 60 °C a danger [HSG274 part 2]', () => {
    expect(of(cautions(fixture({ heaterSetTemperature: 55 })), 'heater-setting')).toMatchObject({ severity: 'danger' });
    expect(of(cautions(fixture({ heaterSetTemperature: 60 })), 'heater-setting')).toBeUndefined();
  });

  it('speaks of a shortfall from 0.1 % of the heat of the year [judgement]', () => {
    const run = fixture();
    expect(of(cautions(run), 'shortfall')).toBeUndefined(); // a few hours, too little to feel
    for (let hour = 19; hour < 8760; hour += 24) run.columns.tapHeat[hour]! *= 0.9;
    expect(of(cautions(run), 'shortfall')!.numbers[0]!.value).toBe(365);
  });

  it('sorts by severity and sends every reader to the local code, in both units [definition]', () => {
    const run = fixture({ panels: 4, mixingValve: false, heaterSetTemperature: 50 });
    run.columns.absorberMinimumTemperature[50] = -25;
    for (const units of ['metric', 'us'] as const) {
      const list = cautions(run, units);
      const order = list.map(({ severity }) => ['danger', 'warning', 'note'].indexOf(severity));
      expect(order).toEqual([...order].sort((a, b) => a - b));
      for (const { advice, code } of list) expect(advice, code).toMatch(/local code/);
    }
    expect(of(cautions(run, 'us'), 'scald')!.finding).toContain('120 °F');
  });
});

/** Every knob of the live page, turned through what it offers: each is taken, and reads back what it wrote. */
import { rateFromSurvey } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { LiveEngine } from '../../packages/reports/src/live/engine.ts';
import type { ChoiceKnob, Ground, NumberKnob } from '../../packages/reports/src/live/page/knob.ts';
import { KNOBS } from '../../packages/reports/src/live/page/knobs.ts';
import type { LiveStart, Plain, Turned, TurnReply } from '../../packages/reports/src/live/types.ts';
import { inventedValley, plainInput } from '../examples.ts';

const START: LiveStart = {
  design: { ...plainInput, heater: { kind: 'stored-gas' } } as unknown as LiveStart['design'],
  prices: {
    currency: 'EUR',
    fuel: { carrier: 'natural-gas', price: 0.11, per: 'kWh' },
    electricity: { carrier: 'electricity', price: 0.32, per: 'kWh' },
  } as LiveStart['prices'],
};

let weather: WeatherYear;
let engine: LiveEngine;
beforeAll(async () => {
  weather = await inventedValley();
  engine = new LiveEngine(START, weather);
});

function turn(now: Turned): TurnReply {
  const reply = engine.handle({ kind: 'turn', id: 1, units: 'metric', now, against: null, pins: [] });
  if (reply.kind !== 'turn') throw new Error(`${JSON.stringify(now)}: ${JSON.stringify(reply)}`);
  return reply;
}

function at(root: unknown, path: string): Plain | undefined {
  return path
    .split('.')
    .reduce<unknown>((of, key) => (of as Record<string, unknown> | undefined)?.[key], root) as Plain;
}

function ground(turned: Turned, reply: TurnReply, units: Ground['units']): Ground {
  const first = (path: string) =>
    path.startsWith('prices.') ? at(START.prices, path.slice(7)) : at(START.design, path);
  const written = (path: string) => (path in turned ? (turned[path] === '' ? undefined : turned[path]) : first(path));
  return { reply, design: reply.design, turned, units, first, written };
}

const applied = (turned: Turned, changes: Readonly<Record<string, Plain | undefined>>): Turned =>
  Object.fromEntries(
    Object.entries({ ...turned, ...changes }).filter((entry): entry is [string, Plain] => entry[1] !== undefined),
  );

/** What has to be turned before a knob is of use. */
const BEFORE: Readonly<Record<string, Turned>> = {
  survey: { 'survey.length': '2 m', 'survey.width': '1 m', 'survey.covers': 1 },
  control: { 'pump.drive': 'mains', 'control.mode': 'difference' },
};
const needed = (id: string): Turned => (id === 'control.highLimit' ? {} : (BEFORE[id.split('.')[0]!] ?? {}));

describe('knobs [requirement]', () => {
  const numbers = KNOBS.filter((knob): knob is NumberKnob => knob.kind === 'number' && knob.fieldOnly !== true);
  it.each(numbers.map((knob) => [knob.id, knob] as const))('%s reads back what it wrote, in both units', (id, knob) => {
    const first = turn(needed(id));
    for (const units of ['metric', 'us'] as const) {
      const [least, most, step] = knob.range[units];
      const value = Number((least + step * Math.round((0.4 * (most - least)) / step)).toPrecision(6));
      const now = applied(needed(id), knob.write(value, ground(needed(id), first, units)));
      const reply = turn(now);
      expect(reply.faults).toEqual([]);
      expect(knob.read(ground(now, reply, units))).toBeCloseTo(value, 3);
    }
  });

  const choices = KNOBS.filter((knob): knob is ChoiceKnob => knob.kind === 'choice' && knob.group !== 'money');
  it.each(choices.map((knob) => [knob.id, knob] as const))('%s: every choice runs and is shown', (id, knob) => {
    const first = turn(needed(id));
    const start = ground(needed(id), first, 'metric');
    for (const [value] of knob.choices(start)) {
      const now = applied(needed(id), knob.write(value, start));
      const reply = turn(now);
      expect(reply.faults).toEqual([]);
      expect(knob.read(ground(now, reply, 'metric'))).toBe(value);
    }
  });

  it('a heater of another kind has its own figures, and the first kind those of the design again', () => {
    const heater = KNOBS.find(({ id }) => id === 'heater.kind') as ChoiceKnob;
    const start = ground({}, turn({}), 'metric');
    const electric = applied({}, heater.write('instantaneous-electric', start));
    const back = applied(electric, heater.write('stored-gas', ground(electric, turn(electric), 'metric')));
    expect(back).toEqual({});
  });

  it('a used panel is that of its survey', () => {
    const seen = { length: '2 m', width: '1 m', covers: 1, coating: 'selective' } as const;
    const turned = Object.fromEntries(Object.entries(seen).map(([name, value]) => [`survey.${name}`, value]));
    const { collector } = rateFromSurvey(seen);
    expect(turn(turned).design.array.collector).toMatchObject({ area: collector.area, a1: collector.a1 });
  });
});

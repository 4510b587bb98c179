import { noticeWords } from '@noonloop/reports';
import { NOTICE_CODES, type RunNotice } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { NOTICE_WORDS } from '../../../packages/reports/src/words/notices.ts';

describe('notices of a run', () => {
  it('have a sentence for each code, and no other [completeness]', () => {
    expect(Object.keys(NOTICE_WORDS).sort()).toEqual([...NOTICE_CODES].sort());
  });

  it('say their numbers in metric and US units, with one kind of minus [requirement]', () => {
    const freezing: RunNotice = {
      code: 'fluid-below-freezing',
      facts: { point: { value: -21.4, unit: '°C' } },
      hours: 3,
    };
    expect(noticeWords(freezing)).toContain('freezing point, −21 °C at');
    expect(noticeWords(freezing, 'us')).toContain('freezing point, −7 °F at');
    const wind: RunNotice = { code: 'wind-held', facts: { highest: { value: 4, unit: 'm/s' } }, hours: 3 };
    expect(noticeWords(wind, 'us')).toContain('above 8.9 mph'); // 4 × 3600/1609.344
    const motor: RunNotice = { code: 'motor-overloaded', facts: { times: { value: 1.5, unit: '1' } }, hours: 3 };
    expect(noticeWords(motor)).toContain('more than 1.5 times');
  });

  it('show the code of a later version as it is [definition]', () => {
    expect(noticeWords({ code: 'later' as 'boiling', facts: {}, hours: 1 })).toBe('later');
  });
});

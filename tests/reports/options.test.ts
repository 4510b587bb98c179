import {
  chart,
  type ReportOptions,
  renderCsv,
  renderHtml,
  renderJson,
  renderMarkdown,
  renderText,
} from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { fixture } from './fixture.ts';

const run = fixture({ panels: 2 });
const misspelt = { unit: 'us' } as ReportOptions;
const RENDERERS = { renderText, renderMarkdown, renderCsv, renderJson, renderHtml } as const;

describe.each(Object.entries(RENDERERS))('%s', (_, render) => {
  const made = async (runs: unknown, options: object = {}) => render(runs as typeof run, options);

  it('refuses an option that it does not know, and says which was meant or what there is [requirement]', async () => {
    await expect(made(run, misspelt)).rejects.toThrow(/options\.unit: found an option of this name, expected /);
    await expect(made(run, { colour: 'red', bend: 1 })).rejects.toThrow(/options\.colour[\s\S]*options\.bend/);
  });

  it('refuses what is no run in words: a promise, a path, nothing [requirement]', async () => {
    await expect(made(Promise.resolve(run))).rejects.toThrow(/found a promise, expected a run\. Put await before it\./);
    await expect(made('report.json')).rejects.toThrow(/results\[0\]: found a string, expected a run/);
    await expect(made(null)).rejects.toThrow(/found null, expected a run/);
    await expect(made([run, undefined])).rejects.toThrow(/results\[1\]: found undefined, expected a run/);
    await expect(made([])).rejects.toThrow(/expected one run or more/);
  });
});

it('says the option that was meant: unit for units [requirement]', () => {
  expect(() => renderText(run, misspelt)).toThrow(/You may mean units\./);
});

it('a chart refuses options it does not know [requirement]', async () => {
  await expect(chart('monthly-energy', run, { height: 300 } as object)).rejects.toThrow(/options\.height/);
});

// A section of a report of one's own: plain data, which text, Markdown and HTML lay out and escape.
import type { OwnSection } from '@noonloop/reports';
import type { RunResult } from '@noonloop/sim-core';

const SEASONS = { winter: [11, 0, 1], spring: [2, 3, 4], summer: [5, 6, 7], autumn: [8, 9, 10] } as const;

/** How often the tank is warm enough at seven in the evening, season by season. @param least - What is warm enough. [°C] */
export function evenings({ columns }: RunResult, least = 45): OwnSection {
  const rows = Object.entries(SEASONS).map(([name, months]) => {
    let warm = 0;
    let days = 0;
    for (let day = 0; day < 365; day++) {
      const month = new Date(Date.UTC(2023, 0, 1 + day)).getUTCMonth();
      if (!(months as readonly number[]).includes(month)) continue;
      days++;
      if (columns.tankTopTemperature[day * 24 + 18]! >= least) warm++;
    }
    return [name, String(warm), String(days)];
  });
  return {
    title: 'Evenings',
    paragraphs: [
      `Days on which the top of the solar tank has ${least} °C or more at seven in the evening, before the heater adds anything.`,
    ],
    table: { header: ['season', 'warm evenings', 'days'], rows },
  };
}

// Drafts of records: prices, the water meter, the notebook of gauges.

/** Prices. */
export const PRICES: readonly [string, string] = [
  `# Prices. What is left out is not reckoned.
currency: EUR
fuel: { carrier: natural-gas, price: 0.11, per: kWh, escalation: 0.02 }
electricity: { carrier: electricity, price: 0.32, per: kWh, co2_kg_per_kWh: 0.35, co2Source: invented }
investment: { new: 4200, used: 1900 }
maintenance: 60
discountRate: 0.03
life: 20
`,
  `# Prices. What is left out is not reckoned.
currency: USD
fuel: { carrier: propane, price: 2.9, per: gal, grossCalorificValue_kWh: 26.8, escalation: 0.02 }
electricity: { carrier: electricity, price: 0.16, per: kWh, co2_kg_per_kWh: 0.35, co2Source: invented }
investment: { new: 4800, used: 2100 }
maintenance: 70
discountRate: 0.03
life: 20
`,
];

const METER_WORDS = `# A record of hot water. The table stands beside this file: "noonloop draft meter-table" writes one.
file: meter.csv
column: reading
quantity: meter # volume of each interval, flow through it, or standings of a meter
`;

const METER_TIME = `time: { timestamp: time }
clock: standard # or daylight-saving with zone: America/Denver, or utc with utcOffset: -7
`;

/** A record of water used. */
export const METER: readonly [string, string] = [
  `${METER_WORDS}unit: L\n${METER_TIME}`,
  `${METER_WORDS}unit: L # or gal\n${METER_TIME}`,
];

/** A week of a meter, read four times a day, on Monday to Sunday. */
export const METER_TABLE = ((): string => {
  const [night, morning, day, evening] = [4, 62, 31, 95];
  const extra = [0, 6, -4, 9, 12, 30, 22];
  let standing = 48_120;
  const lines = ['# Invented.', 'time,reading', `2023-01-02 00:00,${standing}`];
  extra.forEach((more, at) => {
    const date = `2023-01-0${2 + at}`;
    const next = `2023-01-0${3 + at}`;
    for (const [time, water] of [
      [`${date} 06:00`, night],
      [`${date} 10:00`, morning],
      [`${date} 17:00`, day + more],
      [`${next} 00:00`, evening],
    ] as const) {
      standing += water;
      lines.push(`${time},${standing}`);
    }
  });
  return `${lines.join('\n')}\n`;
})();

const LOG_WORDS = `# A notebook of gauges. The table stands beside this file: "noonloop draft readings" writes one.
file: readings.csv
time: { date: date, clock: time }
columns:
`;

/** How the notebook is laid out. */
export const LOG: readonly [string, string] = [
  `${LOG_WORDS}  tankTopTemperature: { column: tank top, unit: degC }
  flowTemperature: { column: hot pipe, unit: degC }
  loopPressure: { column: gauge, unit: bar }
  pumpRuns: { column: pump, unit: yes/no }
uncertainty: { draw: 20 % } # how well you know the house
`,
  `${LOG_WORDS}  tankTopTemperature: { column: tank top, unit: degC } # or degF
  flowTemperature: { column: hot pipe, unit: degC }
  loopPressure: { column: gauge, unit: bar } # or psi
  pumpRuns: { column: pump, unit: yes/no }
uncertainty: { draw: 20 % } # how well you know the house
`,
];

/** A notebook of the drafted house in the drafted town: from a run of our own with a duller panel and more water. */
export const READINGS = `# Invented.
date,time,tank top,hot pipe,gauge,pump
2023-06-30,07:30,55,35,2.16,yes
2023-06-30,18:15,69,61,2.20,no
2023-07-02,13:00,69,73,2.24,yes
2023-07-04,07:30,63,37,2.16,yes
2023-07-04,18:15,65,57,2.19,no
2023-07-06,13:00,46,48,2.19,yes
2023-07-08,07:30,64,38,2.17,yes
2023-07-08,18:15,71,63,2.20,no
2023-07-10,13:00,70,74,2.25,yes
2023-07-12,07:30,59,36,2.16,yes
2023-07-12,18:15,55,33,2.17,no
2023-07-14,13:00,63,67,2.23,yes
2023-07-16,07:30,67,40,2.17,yes
2023-07-16,18:15,61,42,2.17,no
2023-07-18,13:00,52,54,2.20,yes
2023-07-20,07:30,55,36,2.16,yes
2023-07-20,18:15,71,63,2.20,no
2023-07-22,13:00,63,67,2.23,yes
2023-07-24,07:30,53,35,2.16,yes
2023-07-24,18:15,69,62,2.19,no
`;

// Drafts about weather.

const SITE = `site: { name: my town, latitude: 36.1, longitude: -80, elevation: 270, utcOffset: -5 }
monthly: # January first
  dailyGhi_kWh_per_m2: [2.4, 3.2, 4.3, 5.4, 5.9, 6.3, 6.1, 5.5, 4.6, 3.8, 2.7, 2.2] # light on the level, a mean day
`;

/** Twelve monthly means. */
export const MONTHS: readonly [string, string] = [
  `# Twelve monthly means of a place, from a handbook or a national weather service. These are invented.
${SITE}  dryBulb: [3, 5, 9, 14, 19, 23, 25, 24, 21, 15, 10, 5] # mean of the air [degC]
  dailyRange: [11, 12, 13, 13, 12, 11, 10, 10, 11, 13, 12, 11] # day's highest less its lowest [K]
`,
  `# Twelve monthly means of a place, from a handbook or a national weather service. These are invented.
${SITE}  dryBulb_degF: [37, 41, 48, 57, 66, 73, 77, 75, 70, 59, 50, 41] # mean of the air
  dailyRange_degF: [20, 22, 23, 23, 22, 20, 18, 18, 20, 23, 22, 20] # day's highest less its lowest
`,
];

const COLUMNS = `site: { name: my station, latitude: 36.1, longitude: -80, elevation: 270, utcOffset: -5 }
time: { timestamp: time } # such as 2023-07-03 14:00, standard time
stamps: start # a stamp is the start of its hour; or end, or instant
`;

/** Layout of a table of weather. */
export const LAYOUT: readonly [string, string] = [
  `# How a table of weather is laid out, for --layout.
${COLUMNS}columns:
  ghi: { column: global, unit: W/m2 }
  dryBulb: { column: air, unit: degC }
`,
  `# How a table of weather is laid out, for --layout.
${COLUMNS}columns:
  ghi: { column: global, unit: W/m2 }
  dryBulb: { column: air, unit: degF }
`,
];

// Drafts of what is found on panels before they are bought.

const PANEL = `covers: 1
coverKind: low-iron-glass # or window-glass, glass-fibre, polycarbonate
coating: black-paint # or selective, selective-paint
plateMetal: copper # or aluminium, steel, stainless-steel
condition: worn # or good, poor
`;

/** A survey. */
export const SURVEY: readonly [string, string] = [
  `# A used panel as a tape measure and an eye find it. Leave out what you do not know.
length: 2.0 m
width: 1.0 m
${PANEL}tubeSpacing: { value: 12 cm, give: 5 mm }
backInsulation: { low: 40 mm, high: 50 mm }
`,
  `# A used panel as a tape measure and an eye find it. Leave out what you do not know.
length: 78 in
width: 39 in
${PANEL}tubeSpacing: { value: 4.75 in, give: 0.2 in }
backInsulation: { low: 1.5 in, high: 2 in }
`,
];

/** Readings of a yard test. */
export const YARD_TEST: readonly [string, string] = [
  `# Readings of a yard test, means over ten minutes of steady sun; the last with the panel covered.
name: panel from the barn
area: 1.85 m2
points:
  - { inlet: 18 degC, outlet: 26.1 degC, flow: 2.0 L/min, irradiance: 870 W/m2, air: 21 degC }
  - { inlet: 31 degC, outlet: 38.2 degC, flow: 2.0 L/min, irradiance: 880 W/m2, air: 22 degC }
  - { inlet: 46 degC, outlet: 51.9 degC, flow: 2.0 L/min, irradiance: 890 W/m2, air: 22 degC }
  - { inlet: 60 degC, outlet: 64.5 degC, flow: 2.0 L/min, irradiance: 885 W/m2, air: 23 degC }
  - { inlet: 60 degC, outlet: 57.3 degC, flow: 2.0 L/min, irradiance: 0, air: 23 degC }
`,
  `# Readings of a yard test, means over ten minutes of steady sun; the last with the panel covered.
name: panel from the barn
area: 20 ft2
points:
  - { inlet: 64 degF, outlet: 78.6 degF, flow: 0.53 gal/min, irradiance: 870 W/m2, air: 70 degF }
  - { inlet: 88 degF, outlet: 101 degF, flow: 0.53 gal/min, irradiance: 880 W/m2, air: 72 degF }
  - { inlet: 115 degF, outlet: 125.6 degF, flow: 0.53 gal/min, irradiance: 890 W/m2, air: 72 degF }
  - { inlet: 140 degF, outlet: 148.1 degF, flow: 0.53 gal/min, irradiance: 885 W/m2, air: 73 degF }
  - { inlet: 140 degF, outlet: 135.1 degF, flow: 0.53 gal/min, irradiance: 0, air: 73 degF }
`,
];

const tubes = (area: string, gross: string, weight: string, size: string): string => `  - name: new tubes
    panels: 1
    price: 1500
    grossArea: ${gross}
    weightFull: ${weight}
    snow: tubes
    collector:
      area: ${area}
      eta0: 0.62
      a1: 1.1
      a2: 0.004
      heatCapacity: 8000
      fluidContent: ${size}
      incidenceModifier:
        tubes: upright
        transversal: { angles: [0, 20, 40, 60, 80], values: [1, 1.02, 1.1, 1.2, 0.9] }
        longitudinal: { angles: [0, 20, 40, 60, 80], values: [1, 1, 0.97, 0.87, 0.5] }
`;

/** Collectors to choose from. */
export const CANDIDATES: readonly [string, string] = [
  `# Collectors that may go on the roof. "noonloop rate" gives the numbers of a used plate, the test report those of new ones.
years: 15
candidates:
  - name: used plates
    panels: 3
    price: 540
    grossArea: 2 m2
    weightFull: 42 kg
    collector: { area: 1.85 m2, eta0: 0.7, a1: 5.1, a2: 0.018 }
${tubes('3 m2', '3.9 m2', '78 kg', '2 L')}`,
  `# Collectors that may go on the roof. "noonloop rate" gives the numbers of a used plate, the test report those of new ones.
years: 15
candidates:
  - name: used plates
    panels: 3
    price: 540
    grossArea: 21.5 ft2
    weightFull: 93 lb
    collector: { area: 20 ft2, eta0: 0.7, a1: 5.1, a2: 0.018 }
${tubes('32 ft2', '42 ft2', '172 lb', '0.5 gal')}`,
];

// Drafts of a design and of what is done with it.

const WORDS = `# A design. A number is in the unit in brackets; a text may carry another, such as 80 gal. All that is left out takes a default,
# which the report lists with its source.
`;

/** A design with what must be said, and what is often known. */
export const DESIGN: readonly [string, string] = [
  `${WORDS}name: my house
array:
  panels: 2
  tilt: 40 # from the horizontal [degrees]
  azimuth: 180 # clockwise from north: 90 east, 180 south, 270 west [degrees]
  collector: # from the panel's test report (ISO 9806), or from "noonloop rate" for a used one
    area: 2 m2 # the area to which eta0, a1 and a2 refer
    eta0: 0.75
    a1: 3.8 # [W/(m2 K)]
    a2: 0.012 # [W/(m2 K2)]
tank:
  volume: 300 L
draw:
  people: 4 # or dailyVolume: 200 L, or profile: M
  tapTemperature: 45 degC
loop:
  pipeLength: 20 m # there and back
  staticHeight: 6 m # top of the collectors above the gauge
heater:
  kind: stored-gas # stored-electric, instantaneous-gas, instantaneous-electric or element
`,
  `${WORDS}name: my house
array:
  panels: 2
  tilt: 40 # from the horizontal [degrees]
  azimuth: 180 # clockwise from north: 90 east, 180 south, 270 west [degrees]
  collector: # from the panel's test report (ISO 9806), or from "noonloop rate" for a used one
    area: 21 ft2 # the area to which eta0, a1 and a2 refer
    eta0: 0.75
    a1: 0.67 BTU/(h ft2 degF)
    a2: 0.012 # [W/(m2 K2)]
tank:
  volume: 80 gal
draw:
  dailyVolume: 53 gal # or people: 4
  tapTemperature: 113 degF
loop:
  pipeLength: 66 ft # there and back
  staticHeight: 20 ft # top of the collectors above the gauge
heater:
  kind: stored-gas # stored-electric, instantaneous-gas, instantaneous-electric or element
  setTemperature: 140 degF
`,
];

/** Limits of the sizing. */
export const LIMITS: readonly [string, string] = [
  `# What the parts are to keep. All may be left out; the sheet states what was taken.
panels: { aim: year, yearShare: 60 % }
tank: { maximumTemperature: 80 degC, daysOfDraw: 1.25 }
glycol: { margin: 5 K }
pipe: { highestVelocity: 0.7 m/s, lossShare: 5 % }
coil: { difference: 10 K }
pump: { startIrradiance: 200 W/m2 }
vessel: { topPressure: 0.5 bar, ratedPressure: 6 bar }
`,
  `# What the parts are to keep. All may be left out; the sheet states what was taken.
panels: { aim: year, yearShare: 60 % }
tank: { maximumTemperature: 176 degF, daysOfDraw: 1.25 }
glycol: { margin: 9 degF }
pipe: { highestVelocity: 2.3 ft/s, lossShare: 5 % }
coil: { difference: 18 degF }
pump: { startIrradiance: 200 W/m2 }
vessel: { topPressure: 7 psi, ratedPressure: 87 psi }
`,
];

const STUDIES = `#
# study: best-of            study: sensitivity                     study: uncertainty
# goal: { highest: fuelSaved }   vary: { tank.volume: { from: …, to: … } }  vary: { draw.dailyVolume: { p10: …, p90: … } }
# vary: { array.tilt: { from: 20, to: 70 }, array.panels: { from: 2, to: 6, whole: true } }
`;

/** A study. */
export const STUDY: readonly [string, string] = [
  `# A study: every combination of what varies. The design stands beside this file.
study: sweep
design: house.yaml
vary:
  array.panels: [1, 2, 3]
  tank.volume: [200 L, 300 L, 400 L]
price: # what a design costs; gives the designs that no cheaper one beats
  fixed: 1800
  array.panels: 450
  tank.volume: { 200 L: 700, 300 L: 900, 400 L: 1150 }
${STUDIES}`,
  `# A study: every combination of what varies. The design stands beside this file.
study: sweep
design: house.yaml
vary:
  array.panels: [1, 2, 3]
  tank.volume: [50 gal, 80 gal, 110 gal]
price: # what a design costs; gives the designs that no cheaper one beats
  fixed: 1800
  array.panels: 450
  tank.volume: { 50 gal: 700, 80 gal: 900, 110 gal: 1150 }
${STUDIES}`,
];

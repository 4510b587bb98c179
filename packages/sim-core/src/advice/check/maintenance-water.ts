// Tasks at tank and taps.
import { hours, litres, number, PRACTICE, type Rule, type RuleContext } from './maintenance-rule.ts';

/** German drinking water law calls water hard from here: 14 °dH, from memory. [mol/m³] */
const HARD = 2.5;
const SOFT = 1.5;

/** Flush, relief valve, anode, mixing valve. */
export function water({ anode, autumn, design, hardness, spring, wear }: RuleContext): Rule[] {
  const { hotTankHours, tankRelieved, throughTank } = wear;
  const lime = hardness === null ? 'hardness not given, taken as middling' : `hardness ${hardness} mmol/L`;
  const hard = (hardness ?? 2) >= HARD;
  const soft = (hardness ?? 2) < SOFT;
  const often = hard && hotTankHours > 1000 ? 24 : soft ? 72 : 48;
  const through = `${throughTank.toFixed(0)} m³ a year pass the tank, its top is above 60 °C for ${hours(hotTankHours)}, ${lime}`;
  const hotDraw = 'The water can scald; a drain or valve of an old tank may not shut again.';
  const rules: Rule[] = [
    {
      code: 'flush',
      what: 'Flush some buckets from the tank’s drain until it runs clear.',
      season: [autumn, 15],
      everyMonths: hard ? 6 : 12,
      reason: `${through}: what falls out lies on the floor and buries the coil.`,
      numbers: [number('through the tank', throughTank, 'm³'), number('hours above 60 °C', hotTankHours, 'h')],
      basis: `once a year: ${PRACTICE}; twice with hard water: judgement`,
      who: 'owner',
      caution: hotDraw,
    },
    {
      code: 'descale',
      what: 'Have the tank opened, coil and floor looked at and descaled if need be.',
      season: [autumn, 15],
      everyMonths: often,
      reason: `${through}.`,
      numbers: [
        number('hours above 60 °C', hotTankHours, 'h'),
        ...(hardness === null ? [] : [number('hardness', hardness, 'mol/m³')]),
      ],
      basis: 'judgement',
      who: 'licensed trade',
      caution: `${hotDraw} Descaling acid burns, and must not reach drinking water. Disinfect after opening (legionella).`,
    },
    {
      code: 'tank-relief-valve',
      what: 'Lift the tank’s temperature and pressure relief valve; see that it runs freely and shuts, and that its pipe is open.',
      season: [spring, 15],
      everyMonths: tankRelieved > 0 ? 6 : 12,
      reason:
        tankRelieved > 0
          ? `it lets out ${litres(tankRelieved)} in the run: lime will make it drip or stick.`
          : 'it never opens in the run, and what never moves sticks.',
      numbers: [number('let out', tankRelieved, 'm³')],
      basis: `once a year: ${PRACTICE}`,
      who: 'owner',
      caution:
        'Scalding water shoots out: stand aside, keep others away. An old valve may not shut again: have a plumber at hand.',
    },
  ];
  if (anode !== 'none') {
    rules.push({
      code: 'anode',
      what:
        anode === 'magnesium'
          ? 'Measure the anode’s current or take it out; renew it when two thirds are gone.'
          : 'Look at the lamp of the powered anode.',
      season: [spring, 15],
      everyMonths: anode === 'powered' ? 3 : hotTankHours > 2000 || soft ? 12 : 24,
      reason: `${through}: hot water eats an anode faster, and soft water harms the steel more.`,
      numbers: [number('hours above 60 °C', hotTankHours, 'h')],
      basis: `every second year, yearly where hot: ${PRACTICE}`,
      who: anode === 'powered' ? 'owner' : 'licensed trade',
      caution: 'Shut off and take the pressure off before the tank is opened; the water can scald.',
    });
  }
  if (design.draw.mixingValve) {
    rules.push({
      code: 'mixing-valve',
      what: `Measure at the tap nearest to it: it should give ${design.draw.valveTemperature} °C and hold when a second tap opens. Turn it to both ends and back.`,
      season: [spring, 15],
      everyMonths: hard ? 6 : 12,
      reason: `the tank’s top is above 60 °C for ${hours(hotTankHours)}: only the valve stands between it and the taps; ${lime}.`,
      numbers: [number('hours above 60 °C', hotTankHours, 'h')],
      basis: `once a year: ${PRACTICE}`,
      who: 'owner',
      caution: 'Water of 60 °C burns skin within seconds: use a thermometer, keep children away, set it back at once.',
    });
  }
  return rules;
}

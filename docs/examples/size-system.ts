// From a household to a list of parts, each number with its working. The house and its weather are invented.
import { adviceInWords, workingInWords } from '@noonloop/reports';
import {
  type AdviceCode,
  defineSystem,
  glycolForSite,
  potableExpansion,
  type Saying,
  type SystemInput,
  sizeArray,
  sizeCoil,
  sizeLoopPressure,
  sizePipe,
  sizePumpDrive,
  sizeTank,
  type WorkingStep,
} from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house: SystemInput = {
  array: { panels: 1, tilt: 40, azimuth: 180, collector: { area: '21 ft2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' }, // a first guess; sizeTank says more
  draw: { people: 4 },
  loop: { pipeLength: '80 ft', staticHeight: '20 ft' },
};

function print(title: string, steps: readonly WorkingStep[], advice: readonly Saying<AdviceCode>[] = []): void {
  console.log(`\n${title}`);
  for (const { quantity, formula, numbers, result, source } of workingInWords(steps)) {
    console.log(`  ${quantity}: ${formula}`);
    console.log(`      ${numbers}  →  ${result}   [${source}]`);
  }
  for (const sentence of adviceInWords(advice)) console.log(`  ! ${sentence}`);
}

const array = sizeArray(defineSystem(house), weather);
print(`Panels: ${array.panels} for summer, ${array.panelsForYear} for 60 % of the year`, array.steps);

const panels = array.panelsForYear ?? array.panels;
const design = defineSystem({ ...house, array: { ...house.array, panels } });
const tank = sizeTank(design, { dailyGain: array.bestDay });
print(`Tank of ${tank.stockVolume * 1000} L`, tank.steps);

const glycol = glycolForSite(design, weather);
print(`Glycol, ${(100 * glycol.volumeFraction).toFixed(0)} % by volume`, glycol.steps, glycol.notes);

const pipe = sizePipe(design);
const mm = (length: number) => `${Math.round(length * 1000)} mm`;
print(`Tube ${mm(pipe.pipe.outerDiameter)}, insulation ${mm(pipe.insulation.thickness)}`, pipe.steps, pipe.notes);

// The parts chosen so far, for what depends on them.
const chosen = defineSystem({
  ...house,
  array: { ...house.array, panels },
  tank: { volume: tank.stockVolume },
  loop: {
    ...house.loop,
    glycolMassFraction: glycol.massFraction,
    pipeOuterDiameter: pipe.pipe.outerDiameter,
    pipeInnerDiameter: pipe.pipe.innerDiameter,
    insulationThickness: pipe.insulation.thickness,
  },
});
const coil = sizeCoil(chosen);
print(`Coil of ${coil.length.toFixed(1)} m, ${coil.surface.toFixed(2)} m²`, coil.steps);

const pump = sizePumpDrive(chosen);
print(`Pump starts in ${pump.startIrradiance?.toFixed(0)} W/m²`, pump.steps, pump.notes);

const pressure = sizeLoopPressure(chosen);
const bar = (pascal: number) => `${(pascal / 1e5).toFixed(2)} bar`;
print(
  `Vessel ${(pressure.vesselVolume * 1000).toFixed(0)} L, pre-charge ${bar(pressure.prechargePressure)}, fill to ${bar(pressure.fillPressure)} cold, relief at ${bar(pressure.reliefPressure)}`,
  pressure.steps,
  pressure.cautions,
);

const swelling = potableExpansion(chosen);
print(
  `The tank’s water swells by ${(swelling.expansion * 1000).toFixed(1)} L: vessel for drinking water of ${swelling.vesselVolume * 1000} L`,
  swelling.steps,
  swelling.cautions,
);

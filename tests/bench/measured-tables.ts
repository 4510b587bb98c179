/** Tables of docs/theory/measured.md and of the guide on trust: how far the models are off what was measured. */
import { drawProfile } from '@noonloop/sim-core/formulas';
import {
  fitCollector,
  foretellOutlet,
  formulaPairs,
  headerCheck,
  lightFactor,
} from '../validation/measured/collector.ts';
import {
  defaultTankLoss,
  EVEN,
  feedingNights,
  fittedSettings,
  fittedTankLoss,
  nightEnds,
  nightFall,
  pumpAgreement,
  stagnationDays,
} from '../validation/measured/house.ts';
import { MAINS_WAYS, mainsPairs } from '../validation/measured/mains.ts';
import { erbsPairs, PLANES, planePairs, type SkyWord } from '../validation/measured/planes.ts';
import { type Misfit, misfit, type Pairs } from '../validation/measured/sets.ts';
import { stagnationRows } from '../validation/measured/stagnation.ts';
import { SENSORS, standingFalls, storeDay } from '../validation/measured/store.ts';
import { hourShares, misplaced, showers } from '../validation/measured/taps.ts';
import { gaugesTable } from './measured-gauges.ts';
import { table } from './page-tables.ts';

type Cell = string | number;

const signed = (value: number, digits = 1): string => {
  const text = Math.abs(value).toFixed(digits);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
};
const fixed = (value: number, digits = 1): string => value.toFixed(digits);
/** Bias and RMSE in per cent of the mean. */
const inPercent = (pairs: Pairs): string[] => {
  const { mean, bias, rmse } = misfit(pairs);
  return [signed((100 * bias) / mean), fixed((100 * rmse) / mean)];
};
const asRow = ({ count, bias, rmse }: Misfit, digits = 1): Cell[] => [count, signed(bias, digits), fixed(rmse, digits)];

function planes(): string {
  const models: readonly SkyWord[] = ['perez', 'hay-davies', 'isotropic'];
  const rows = PLANES.map(([name], at) => [
    name,
    Math.round(misfit(planePairs(at, 'perez', true)).mean),
    ...models.flatMap((model) => inPercent(planePairs(at, model, true))),
    ...inPercent(planePairs(at, 'perez', false)),
  ]);
  const pair = (name: string) => [`${name}: bias, %`, 'RMSE, %'];
  return table(
    ['plane', 'measured, W/m²', ...models.flatMap((name) => pair(name)), ...pair('Perez, albedo left at 0.2')],
    rows,
  );
}

function collector(): string {
  const fit = fitCollector();
  const minutes = foretellOutlet(fit);
  const of = (name: string, kept: typeof minutes) => [
    name,
    ...asRow(
      misfit({ measured: kept.map(({ measured }) => measured), modelled: kept.map(({ modelled }) => modelled) }),
    ),
    ...inPercent({ measured: kept.map(({ flux }) => flux[0]), modelled: kept.map(({ flux }) => flux[1]) }),
  ];
  const march = misfit(formulaPairs(fit));
  const header = headerCheck();
  const headerMarch = misfit(header.march);
  return [
    `Fitted: η0 ${fixed(fit.eta0, 3)} as logged, slope ${fixed(fit.a1, 2)} W/(m² K), heat capacity ${fixed(fit.heatCapacity / 1000, 2)} kJ/(m² K); the default is 8.0.`,
    '',
    table(
      ['30 June, minutes', 'count', 'outlet: bias, K', 'RMSE, K', 'heat: bias, %', 'RMSE, %'],
      [
        of(
          'in steady light',
          minutes.filter(({ steady }) => steady),
        ),
        of(
          'in changing light',
          minutes.filter(({ steady }) => !steady),
        ),
      ],
    ),
    '',
    `31 March, ${march.count} rows of 400 s in broken cloud: ${signed(march.bias, 0)} W/m² on ${fixed(march.mean, 0)} W/m² measured. Light of ${fixed(lightFactor(fit), 2)} times the reading would give what was measured.`,
    '',
    `Between the headers instead of by the loops' own gauges: η0 ${fixed(header.eta0, 2)}, slope ${fixed(header.a1, 2)} W/(m² K) on the same two days; 31 March ${signed(headerMarch.bias, 0)} W/m² on ${fixed(headerMarch.mean, 0)}, RMSE ${fixed(headerMarch.rmse, 0)}.`,
    `The four loops together claim ${fixed(header.loopsOverHeader[0], 2)} times the header's heat in June and ${fixed(header.loopsOverHeader[1], 2)} times in March; behind the exchanger arrives ${fixed(header.acrossExchanger, 2)} times the header's heat.`,
  ].join('\n');
}

function store(): string {
  const minutes = storeDay();
  const rows = SENSORS.map((name, at) => [
    name,
    ...asRow(
      misfit({
        measured: minutes.map(({ measured }) => measured[at]!),
        modelled: minutes.map(({ modelled }) => modelled[at]!),
      }),
    ),
  ]);
  const { hot, cold } = standingFalls();
  const words = (falls: readonly number[]) => falls.map((fall) => fixed(fall, 2)).join(', ');
  return [
    table(['sensor', 'minutes', 'bias, K', 'RMSE, K'], rows),
    '',
    `While nothing flows, bottom, middle and top of the hot tank fall by ${words(hot)} K an hour, of the cold tank by ${words(cold)}.`,
  ].join('\n');
}

function house(): string {
  const feeding = feedingNights();
  const [fitted, usual] = [fittedTankLoss(), defaultTankLoss()];
  const rows = (
    [
      ['fitted on every second night', fitted],
      ['the default', usual],
    ] as const
  ).flatMap(([name, loss]) => {
    const ends = nightEnds(loss);
    return (['bottom', 'top', 'mean'] as const).map((part) => [
      name,
      fixed(loss, 2),
      part,
      ...asRow(misfit(ends[part]), 2),
    ]);
  });
  return [
    table(['loss', 'W/K', 'part of the tank', 'nights', 'bias, K', 'RMSE, K'], rows),
    '',
    `The mean fell by ${fixed(nightFall(), 2)} K a night. Left out are ${feeding.count} nights on which the collectors stood warmer than the room; on them the tank seems to lose ${fixed(feeding.loss, 2)} W/K.`,
  ].join('\n');
}

function control(): string {
  const settings = fittedSettings();
  const { same, hours } = pumpAgreement(settings, EVEN);
  const { days, highest } = stagnationDays(120);
  return [
    `Settings by the odd months: start ${settings.start} K, stop ${settings.stop} K, off at ${settings.highLimit} °C in the tank's top. In the even months model and pump say the same`,
    `in ${fixed(100 * same)} % of the five-minute rows in which either might run. It runs ${fixed(hours[0], 0)} h, by the model ${fixed(hours[1], 0)} h (${signed((100 * (hours[1] - hours[0])) / hours[0])} %).`,
    `The standing collector passed 120 °C on ${days} days of 2017; the highest five-minute mean is ${fixed(highest)} °C.`,
  ].join('\n');
}

function taps(): string {
  const { count, litres, minutes, flow } = showers();
  const hours = hourShares();
  const spread = (values: readonly number[]) => values.map((value) => fixed(value));
  const sizes = table(
    [`${count} showers`, '1 in 10 below', 'middle', '1 in 10 above', 'profile M'],
    [
      ['water, L', ...spread(litres), '40 at 40 °C'],
      ['time, min', ...spread(minutes), '6.7'],
      ['flow, L/min', ...spread(flow), '6'],
    ],
  );
  const shapes = (['level', 'evening', 'morning', 'M'] as const).map((name) => [
    name,
    fixed(100 * misplaced(hours, drawProfile(name).hourlyShares), 0),
  ]);
  return [sizes, '', table(['shape of the day', 'water in another hour, %'], shapes)].join('\n');
}

function mains(): string {
  const ways = Object.keys(MAINS_WAYS) as (keyof typeof MAINS_WAYS)[];
  return table(
    ['way', 'readings', 'bias, K', 'RMSE, K'],
    ways.map((way) => [way, ...asRow(misfit(mainsPairs(way)))]),
  );
}

const stagnation = (): string =>
  table(
    ['sheet', 'stated, °C', 'by η0,b, a1, a2', 'difference, K'],
    stagnationRows().map(({ source, stated, byCoefficients }) => [
      source,
      fixed(stated),
      fixed(byCoefficients),
      signed(byCoefficients - stated),
    ]),
  );

function erbs(): string {
  const words = (by: 'hours' | 'quarters', name: string) => {
    const found = misfit(erbsPairs(by));
    return `${name}, ${found.count}: ${signed((100 * found.bias) / found.mean)} % in the mean, RMSE ${fixed(found.rmse, 0)} W/m² on ${fixed(found.mean, 0)} W/m²`;
  };
  return `Diffuse light split from the global by Erbs. ${words('hours', 'Hours')}. ${words('quarters', 'Quarters of an hour')}.`;
}

/** Tables by the name of their marks. */
export const measuredTables = (): Record<string, string> => ({
  planes: planes(),
  erbs: erbs(),
  collector: collector(),
  store: store(),
  nights: house(),
  control: control(),
  gauges: gaugesTable(),
  taps: taps(),
  mains: mains(),
  stagnation: stagnation(),
});

/** For the guide on trust, worst first. */
export function measuredInShort(): string {
  const [sheet] = stagnationRows();
  const fit = fitCollector();
  const minutes = foretellOutlet(fit);
  const flux = misfit({ measured: minutes.map(({ flux }) => flux[0]), modelled: minutes.map(({ flux }) => flux[1]) });
  const south = misfit(planePairs(0, 'perez', true));
  const wall = misfit(planePairs(3, 'perez', true));
  const london = misfit(mainsPairs('correlation with the air (a design’s default)'));
  const night = misfit(nightEnds(fittedTankLoss()).mean);
  const { same, hours } = pumpAgreement(fittedSettings(), EVEN);
  const layers = storeDay();
  const worst = SENSORS.map((_, at) =>
    misfit({
      measured: layers.map(({ measured }) => measured[at]!),
      modelled: layers.map(({ modelled }) => modelled[at]!),
    }),
  ).reduce((most, one) => (one.rmse > most.rmse ? one : most));
  const percent = (value: number, of: number) => signed((100 * value) / of);
  const rows: Cell[][] = [
    [
      'hour of the hot water, tapping profile M against one flat',
      `${fixed(100 * misplaced(hourShares(), drawProfile('M').hourlyShares), 0)} % of the water in another hour`,
      'one flat of one person, cold water counted too',
    ],
    [
      'loss of a 300 L tank by default',
      `${percent(defaultTankLoss() - fittedTankLoss(), fittedTankLoss())} %`,
      'one house, its volume assumed',
    ],
    [
      'stagnation temperature from coefficients',
      `${signed(sheet!.byCoefficients - sheet!.stated, 0)} K`,
      'one certificate',
    ],
    ['cold water, London', `${signed(london.bias)} K, RMSE ${fixed(london.rmse)} K`, `${london.count} readings`],
    [
      'light on a south wall, hours',
      `${percent(wall.bias, wall.mean)} %, RMSE ${fixed((100 * wall.rmse) / wall.mean)} %`,
      '15 days',
    ],
    [
      'running time of the pump from measured temperatures',
      `${percent(hours[1] - hours[0], hours[0])} %; ${fixed(100 * same, 0)} % of rows alike`,
      'six months',
    ],
    [
      'layers of a store through a day, worst sensor',
      `${signed(worst.bias)} K, RMSE ${fixed(worst.rmse)} K`,
      'one day',
    ],
    [
      'heat of collectors once fitted, other day, by minutes',
      `${percent(flux.bias, flux.mean)} %, RMSE ${fixed((100 * flux.rmse) / flux.mean)} %`,
      `${minutes.length} minutes`,
    ],
    [
      'light at 40° south, hours',
      `${percent(south.bias, south.mean)} %, RMSE ${fixed((100 * south.rmse) / south.mean)} %`,
      '15 days',
    ],
    [
      'tank over a night, loss fitted on other nights',
      `${signed(night.bias, 2)} K, RMSE ${fixed(night.rmse, 2)} K`,
      `${night.count} nights`,
    ],
  ];
  return table(['measured', 'how far off', 'from'], rows);
}

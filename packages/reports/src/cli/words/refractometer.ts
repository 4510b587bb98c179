// What a refractometer, a hydrometer or a freezer says about the glycol.
import type { GlycolReading } from '@noonloop/sim-core';
import { withUnit } from '../../shown-units.ts';
import { numberOf, ofOptions, quantityOption, temperatureOption } from '../option-values.ts';
import { sentences } from '../sheet/model.ts';
import { choice, type Word } from '../word.ts';

interface ReadingOptions {
  readonly scale?: GlycolReading['scale'];
  readonly value?: string;
  readonly glycol?: 'propylene-glycol' | 'ethylene-glycol';
  readonly temperature?: string;
  readonly give?: string;
  readonly ph?: string;
  readonly coldest?: string;
}

/** From a reading to protection. */
export const refractometer: Word<ReadingOptions> = {
  usage: 'refractometer',
  summary: 'from a reading of the glycol to its protection',
  description:
    'Turns what an instrument shows into the share of glycol and the temperature down to which it protects, with what the instrument may be off.',
  example: 'noonloop refractometer --scale freezing-point --value "-4 degF" --ph 7.6 --units us',
  formats: [],
  needs: ['scale', 'value'],
  options: (command) =>
    command
      .addOption(
        choice('--scale <scale>', 'what the instrument shows', [
          'freezing-point',
          'refractive-index',
          'brix',
          'density',
        ]),
      )
      .option('--value <reading>', 'the reading, such as "-4 degF", 27.5 or 1.377')
      .addOption(
        choice('--glycol <kind>', 'kind of glycol (default: propylene-glycol)', [
          'propylene-glycol',
          'ethylene-glycol',
        ]),
      )
      .option('--temperature <temperature>', 'of the sample (default: 20 degC)')
      .option('--give <number>', 'what instrument and eye may be off, in the unit of the scale')
      .option('--ph <number>', 'a pH that was measured too')
      .option('--coldest <temperature>', 'that the fluid must bear: is it enough'),
  run: async ({ options, units }) => {
    const { glycolFromReading, glycolVerdict } = await import('@noonloop/sim-core');
    const { glycol, temperature, give, ph, coldest } = options;
    const result = ofOptions(() =>
      glycolFromReading({
        scale: options.scale!,
        value: quantityOption(options.value!),
        ...(glycol ? { glycol } : {}),
        ...(temperature === undefined ? {} : { temperature: quantityOption(temperature) }),
        ...(give === undefined ? {} : { give: numberOf('give', give) }),
      }),
    );
    const verdict = ph === undefined ? null : glycolVerdict(numberOf('ph', ph));
    const point = (value: number) => withUnit(value, '°C', units);
    const percent = (part: number) => `${(100 * part).toFixed(0)} %`;
    const spare = coldest === undefined ? null : temperatureOption('coldest', coldest) - result.worstFreezingPoint;
    return {
      sheet: {
        title: `${percent(result.massFraction)} of glycol by mass, ${percent(result.volumeFraction)} by volume`,
        blocks: [
          sentences(
            `First ice at ${point(result.freezingPoint)}, at ${point(result.worstFreezingPoint)} if the reading is off to the weaker side (± ${percent(result.error)} by mass). No burst pipe down to ${point(result.burstPoint)}.`,
          ),
          ...(spare === null
            ? []
            : [
                sentences(
                  spare >= 0
                    ? `It is enough: ${withUnit(spare, 'K', units)} to spare at the worst.`
                    : `It is not enough: too weak by ${withUnit(-spare, 'K', units)} at the worst.`,
                ),
              ]),
          ...(verdict === null ? [] : [sentences(`pH ${ph}: ${verdict}`)]),
          { kind: 'working', title: 'Working', steps: result.steps },
        ],
      },
      data: { ...result, ...(verdict === null ? {} : { verdict }), ...(spare === null ? {} : { spare }) },
    };
  },
};

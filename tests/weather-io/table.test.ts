// What is read digit by digit and line by line, against JavaScript's own numbers and against the splitter over the whole text.
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { Faults } from '../../packages/weather-io/src/errors.ts';
import { numberOf } from '../../packages/weather-io/src/table/column.ts';
import { readCsv } from '../../packages/weather-io/src/table/csv.ts';
import { digitsAt, wholeNumber } from '../../packages/weather-io/src/table/sequence.ts';

describe('numbers of cells [ECMAScript: Number of a decimal text is the nearest double]', () => {
  it('of 1 to 18 digits, the point anywhere, with a sign or none, are the nearest double', () => {
    let state = 1;
    const below = (count: number) => {
      state = (state * 48_271) % 2_147_483_647; // Park & Miller (1988), minimal standard generator
      return state % count;
    };
    const wrong = Array.from({ length: 5000 }, () => {
      const digits = Array.from({ length: 1 + below(18) }, () => below(10)).join('');
      const point = below(digits.length + 2);
      const text =
        ['', '-', '+'][below(3)] +
        (point > digits.length ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`);
      return Object.is(numberOf(text), Number(text)) ? [] : [text];
    });
    expect(wrong.flat()).toEqual([]);
  });

  it.each(['-0', '-0.0', ' 7.5 ', '1e3', '-2.5E-2', '+.5', '5.', '9007199254740993', '0.1234567890123456789'])(
    '%j is what JavaScript reads',
    (text) => expect(numberOf(text)).toBe(Number(text)),
  );

  it.each(['', ' ', '.', '-', '+.', '1.2.3', '1-2', '0x10', 'Infinity', '1,5', '1 2', '٣', '1e400x'])(
    '%j is none',
    (text) => expect(numberOf(text)).toBeNaN(),
  );
});

describe('whole numbers of stamps [requirement: up to four digits, nothing else]', () => {
  it.each([
    ['0', 0],
    ['2017', 2017],
    [' 08 ', 8],
    ['12345', Number.NaN],
    ['1.0', Number.NaN],
    ['-1', Number.NaN],
    ['', Number.NaN],
    [undefined, Number.NaN],
  ])('%j', (text, value) => expect(wholeNumber(text)).toBe(value));

  it('inside a text: nothing but digits, and nothing beyond its end', () => {
    const stamp = '20170131:0930';
    expect([digitsAt(stamp, 0, 4), digitsAt(stamp, 11, 13)]).toEqual([2017, 30]);
    expect([digitsAt(stamp, 6, 9), digitsAt(stamp, 11, 14), digitsAt(stamp, 3, 3)]).toEqual(Array(3).fill(Number.NaN));
  });
});

describe('rows of a text [requirement: as the splitter has them of the whole text]', () => {
  it.each([
    ['no quotation mark', 'a,b\n1,2\n\n3,4\n'],
    ['in the first line', 'x,"a, b",y\n1,2,3\n4,5,6'],
    ['in the last line', 'a,b\n1,"2"'],
    ['doubled, and with blanks after', '"say ""so""" ,b\n1,2\n3,4'],
    ['inside a cell', '6" of snow,b\n1,2\n3,4'],
    ['closed before more letters', '"a"b,"c"\n1,2\n3,4'],
  ])('%s', (_, text) => {
    const { rows } = readCsv(text, new Faults('x'));
    expect(rows).toEqual(Papa.parse(text, { delimiter: ',', newline: '\n' }).data);
  });

  it.each(['a,"b\n1,2\n3,4', '"a\nb",c\n1,2'])('a line end inside quotation marks is refused: %j', (text) => {
    expect(() => readCsv(text, new Faults('x'))).toThrow('each quotation mark closed in its line');
  });
});

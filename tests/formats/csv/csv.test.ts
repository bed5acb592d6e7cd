import { describe, expect, test } from 'vitest';
import { decimal, writeCsv } from '../../../src/formats/csv/csv';
import { readCsv } from '../../../src/formats/csv/readCsv';

describe('tables', () => {
  // RFC 4180, section 2: CRLF after each record, quotes doubled inside quotes.
  test('quote what needs it and nothing else', () => {
    const rows = [
      ['r 1', 'a,b'],
      [' r1 ', 'say "when"'],
      ['two\nlines', ''],
    ];
    const text = writeCsv(['id', 'note'], rows);
    expect(text).toBe('id,note\r\nr 1,"a,b"\r\n" r1 ","say ""when"""\r\n"two\nlines",\r\n');
    expect(readCsv(text)).toEqual(rows.map(([id, note]) => ({ id, note })));
  });

  test('hold at least five decimals, a point, no exponent, no minus zero', () => {
    const written = [0.1, -0, -1e-12, 1e-7, 123456.5, -0.00000001, 1 / 3].map((v) => decimal(v).text);
    expect(written).toEqual([
      '0.10000000',
      '0.00000000',
      '0.00000000',
      '0.00000010',
      '123456.50000000',
      '-0.00000001',
      '0.33333333',
    ]);
  });

  test('whatever the language of the machine', () => {
    const before = Number.prototype.toLocaleString;
    try {
      // A German machine: were a locale ever asked, a comma would come.
      Number.prototype.toLocaleString = () => '1,5';
      expect(decimal(1.5).text).toBe('1.50000000');
    } finally {
      Number.prototype.toLocaleString = before;
    }
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e21])('refuse %d', (value) => {
    expect(() => decimal(value)).toThrow(RangeError);
  });

  test('a row that does not fit its header is a caller’s mistake, and a file’s', () => {
    expect(() => writeCsv(['a'], [['1', '2']])).toThrow(RangeError);
    expect(() => readCsv('a,b\r\n1\r\n')).toThrow(/Row 1 has 1 cells under 2/);
    expect(() => readCsv('a\r\n"open\r\n')).toThrow(/quote/);
  });

  test('read with either line end, and with none at the last', () => {
    expect(readCsv('a,b\n1,2\n3,')).toEqual([
      { a: '1', b: '2' },
      { a: '3', b: '' },
    ]);
  });
});

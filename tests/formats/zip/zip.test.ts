import { spawnSync } from 'node:child_process';
import { unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { zipFolder } from '../../../src/formats/zip/zip';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });

describe('the zip', () => {
  test('holds each file under one folder', () => {
    const entries = unzipSync(zipFolder('header', [file('b.csv', 'two'), file('runners/a.stl', 'one')]));
    expect(Object.keys(entries)).toEqual(['header/b.csv', 'header/runners/a.stl']);
    expect(new TextDecoder().decode(entries['header/b.csv'])).toBe('two');
  });

  test('is the same bytes whatever the order, the day and the time zone', () => {
    const [a, b] = [file('a', '1'), file('b', '2')];
    expect(zipFolder('h', [a, b])).toEqual(zipFolder('h', [b, a]));
    const script = `
      import { zipFolder } from './src/formats/zip/zip.ts';
      const bytes = zipFolder('h', [{ name: 'a', bytes: new TextEncoder().encode('1') }]);
      console.log(Buffer.from(bytes).toString('hex'));`;
    const inZone = (TZ: string) =>
      spawnSync('node', ['--import', 'tsx', '--input-type=module', '-e', script], {
        env: { ...process.env, TZ },
        encoding: 'utf8',
      }).stdout;
    expect(inZone('Pacific/Auckland')).toMatch(/^504b0304/);
    expect(inZone('Pacific/Auckland')).toBe(inZone('America/Los_Angeles'));
  });

  test.each(['../a', '/a', 'a//b', './a', ''])('refuses the name "%s"', (name) => {
    expect(() => zipFolder('h', [file(name, '')])).toThrow(RangeError);
  });

  test('refuses a name given twice', () => {
    expect(() => zipFolder('h', [file('a', '1'), file('a', '2')])).toThrow(/twice/);
  });
});

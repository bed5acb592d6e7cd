import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parseDesign } from '../../shared/design/parse';
import { newForm } from '../../shared/engine/formDefaults';
import { type Bench, bench } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());
const at = (name: string) => join(b.folder, name);

describe('new', () => {
  test('from a few options: 0, a design that checks, pairs and stand-ins said', async () => {
    const { code, out, err } = await b.evenrun(
      ...'new --cylinders 4 --firing-order 1-3-4-2 --pitch 95 --arrangement pairs-then-one -o out.json'.split(' '),
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('first joined: 1 + 4 (360° apart), 2 + 3 (360° apart).');
    expect(out).toMatch(/^A first header: written to out\.json$/m);
    const { engine, ports } = parseDesign(readFileSync(at('out.json'), 'utf8'));
    expect(engine!.firingOrder).toEqual([1, 3, 4, 2]);
    expect(ports[1]!.position[0] - ports[0]!.position[0]).toBe(95);
    expect((await b.evenrun('check', 'out.json')).code).toBe(0);
  });

  test('from a form, --json: the report with pairs and notes', async () => {
    writeFileSync(at('form.json'), JSON.stringify(newForm({ cylinders: 3 })));
    const { code, out } = await b.evenrun('new', 'form.json', '-o', 'out.json', '--json');
    const answer = JSON.parse(out);
    expect([code, answer.ok, answer.pairs, answer.output]).toEqual([0, true, [], 'out.json']);
    expect(answer.notes.length).toBeGreaterThan(0);
  });

  test('what the tooling cannot make: 1, and the best attempt written', async () => {
    const form = newForm({ cylinders: 2 });
    const { tooling, ...tube } = form.primary;
    writeFileSync(
      at('form.json'),
      JSON.stringify({ ...form, primary: { ...tube, tooling: { ...tooling, maxBends: 1 } } }),
    );
    const { code, out } = await b.evenrun('new', 'form.json', '-o', 'out.json');
    expect(code).toBe(1);
    expect(out).toMatch(/^Best attempt, not every rule holds: written to out\.json$/m);
    expect(existsSync(at('out.json'))).toBe(true);
  });

  test.each([
    ['neither form nor cylinders', '', /name a form, or say at least --cylinders/],
    ['no number', '--cylinders four', /--cylinders: found "four"; allowed: a number/],
    ['too many', '--cylinders 40', /cylinders: found 40; allowed: a whole number from 1 to 12/],
    [
      'an order that leaves one out',
      '--cylinders 4 --firing-order 1-3-4',
      /firingOrder: found no place where cylinder 2/,
    ],
    ['an order with one twice', '--cylinders 4 --firing-order 1-3-4-3', /firingOrder: found cylinder 3 twice/],
    ['a pitch smaller than the tube', '--cylinders 4 --pitch 40', /banks\/0\/pitch: found 40; allowed: at least/],
    ['pairs of three', '--cylinders 3 --arrangement pairs-then-one', /collectors\/0\/cylinders: found 3 cylinders/],
    [
      'an unknown arrangement',
      '--cylinders 4 --arrangement both',
      /--arrangement: found "both"; allowed: all-into-one/,
    ],
    ['a form that is not there', 'form.json', /form\.json: no such file/],
    [
      'a range that is none',
      '--cylinders 4 --rpm 7000-1500 ',
      /--rpm: found "7000-1500"; allowed: the lower and the higher/,
    ],
    ['options beside a form', 'form.json --bore 80', /--bore: not beside a form/],
  ])('%s: 2, one line, nothing written', async (_, args, line) => {
    const { code, out, err } = await b.evenrun('new', ...args.split(' ').filter(Boolean), '-o', 'out.json');
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(line);
    expect(err.trimEnd()).not.toContain('\n');
    expect(existsSync(at('out.json'))).toBe(false);
  });

  test.each([
    ['a field missing', { bore: 80 }, /form\.json: title: found nothing; allowed: text/],
    ['a word for a number', { ...newForm({ cylinders: 2 }), bore: 'wide' }, /bore: found "wide"; allowed: a number/],
    [
      'a collector in the head',
      {
        ...newForm({ cylinders: 2 }),
        collectors: [{ ...newForm({ cylinders: 2 }).collectors[0], position: [0, -150, 0] }],
      },
      /collectors\/0\/position: found \[0, -150, 0\], in the head of bank 1; allowed: a place in front/,
    ],
  ])('a form with %s: 2, the path', async (_, form, line) => {
    writeFileSync(at('form.json'), JSON.stringify(form));
    const { code, err } = await b.evenrun('new', 'form.json', '-o', 'out.json');
    expect(code).toBe(2);
    expect(err).toMatch(line);
    expect(existsSync(at('out.json'))).toBe(false);
  });
});

/** Steps at the workbench: in the order of work, with ids that stay, numbers as tape and dial read them, each in its own words. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { resolveHeader } from '../../../geometry';
import type { Design, Workshop } from '../../../shared/design/types';
import { tapeFigure } from '../../../src/shop/bench/figures';
import type { Step } from '../../../src/shop/bench/step';
import { benchSteps } from '../../../src/shop/bench/steps';
import { createUnits } from '../../../src/shop/bench/units';
import type { Making } from '../../../src/shop/making/report';
import { toStep } from '../../../src/shop/toStep';
import { ONE_BEND, oneRunner } from '../designs';
import { sampleMaking } from './sampleMaking';

const EXAMPLES = join(import.meta.dirname, '../../../public/examples');
const example = JSON.parse(readFileSync(join(EXAMPLES, 'four-4-1.evenrun.json'), 'utf8')) as Design;
const madeOf = (material: string): Partial<Design> => ({
  tubes: Object.fromEntries(Object.entries(example.tubes).map(([name, tube]) => [name, { ...tube, material }])),
});

const made = (
  way: 'welded' | 'bent',
  change: Partial<Design> = {},
  find: (making: Making) => Making = (m) => m,
): Step[] => {
  const tooling = Object.fromEntries(Object.entries(example.tooling).map(([k, t]) => [k, { ...t, making: way }]));
  const header = resolveHeader({ ...example, tooling, ...change });
  return benchSteps(find(sampleMaking(header)), header);
};
const workshop = (change: Workshop): Partial<Design> => ({ workshop: { ...example.workshop, ...change } });
const of = (steps: readonly Step[], runner: string) => steps.filter((step) => step.runner === runner);
const step = (steps: readonly Step[], id: string): Step => steps.find((s) => s.id === id)!;
const value = (s: Step, name: string) => s.figures.find((f) => f.name === name)?.value;

describe('steps of a runner that is welded up', () => {
  const steps = made('welded');
  const first = example.runners[0]!.id;

  it('have ids of their own', () => {
    expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
  });

  it('come in the order of work: every piece sawn and tacked, then checked, then welded, then looked at', () => {
    const tasks = of(steps, first).map(({ task }) => task);
    expect(tasks.slice(0, 4)).toEqual(['cut', 'dress', 'fit', 'fit']);
    const at = (task: string) => [tasks.indexOf(task as never), tasks.lastIndexOf(task as never)] as const;
    expect(at('cut')[1]).toBeLessThan(at('check')[0]);
    expect(at('check')[1]).toBeLessThan(at('weld')[0]);
    expect(tasks.at(-1)).toBe('prove');
  });

  it('give each piece its own saw, and each joint one turn and one weld', () => {
    const header = resolveHeader(example);
    const { pieces, joints } = sampleMaking(header).welded[0]!;
    const own = of(steps, first);
    expect(own.filter(({ id }) => id.includes('/saw/')).map(({ title }) => title)).toEqual(
      pieces.map(({ id }) => `Saw piece ${id}`),
    );
    expect(own.filter(({ id }) => /\/turn\/.+\+/.test(id))).toHaveLength(joints.length);
    expect(own.filter(({ id }) => /\/weld\//.test(id))).toHaveLength(joints.length);
  });

  it('say the stock a piece comes from beside what makes the step another', () => {
    const saw = step(steps, `${first}/saw/${first}-1`);
    expect(saw.beside.map(({ value }) => value)).toContain('stock bend U 64 no. 1, on the shelf');
    expect(saw.figures.map(({ name }) => name)).not.toContain('From');
  });

  it('mark stock that no workshop has, and is only assumed to be on sale', () => {
    const froms = (assumed: boolean) =>
      made('welded', {}, (m) => ({
        ...m,
        plan: { ...m.plan, buy: m.plan.buy.map((line) => ({ ...line, assumed })) },
      })).flatMap(({ beside }) => beside.filter(({ name }) => name === 'From').map(({ value }) => String(value)));
    const bought = froms(true).filter((from) => !from.includes('on the shelf'));
    expect(bought.length).toBeGreaterThan(0);
    for (const from of bought) expect(from).toMatch(/, assumed to be on sale$/);
    expect(froms(false).join()).not.toContain('assumed');
  });

  it('round to the tape and to the dial', () => {
    const coarse = made('welded', workshop({ tape: 1, dial: 5 }));
    for (const s of coarse)
      for (const f of s.figures) {
        if (f.kind === 'length') expect(f.value).toBe(Math.round(f.value));
        if (f.kind === 'angle') expect(f.value % 5).toBe(0);
      }
  });

  it('say which way round in words, never by a sign', () => {
    const turns = steps.filter(({ id }) => /\/turn\/.+\+/.test(id));
    const [welded] = sampleMaking(resolveHeader(example)).welded;
    const said = turns[0]!.figures[0]!;
    expect(said.kind === 'angle' && said.way).toBe(welded!.joints[0]!.turn < 0 ? 'counter-clockwise' : 'clockwise');
    for (const t of turns) for (const f of t.figures) expect(Number(f.value)).toBeGreaterThanOrEqual(0);
  });

  it('warn where a torch has no room all round, and who takes it', () => {
    const [weld, next] = of(steps, first).filter(({ id }) => id.includes('/weld/'));
    expect(weld!.care).toHaveLength(2);
    expect(weld!.care[1]).toContain('with r2 there');
    expect(weld!.beside.map(({ value }) => value)).toEqual(['240° of 360°', '100° of 360°']);
    expect(next?.care ?? []).toEqual([]);
  });

  it.each([
    ['stainless-304', true],
    ['titanium-2', true],
    ['mild-steel', false],
  ] as const)('ask for argon inside %s: %s, with what it does to who breathes it', (material, asked) => {
    const purge = made('welded', madeOf(material)).find(({ id }) => id === `${first}/purge`);
    expect(purge !== undefined).toBe(asked);
    if (asked) expect(purge!.care.join()).toContain('closed rooms');
  });

  it('call a collector by its name, not by its kind as well where that is in it', () => {
    const tied = JSON.parse(readFileSync(join(EXAMPLES, 'four-4-2-1.evenrun.json'), 'utf8')) as Design;
    const header = resolveHeader(tied);
    const titles = benchSteps(sampleMaking(header), header).flatMap(({ title, says }) => [title, ...says]);
    expect(titles.filter((t) => /pair 1-4/.test(t)).join()).toContain('collector pair 1-4');
    expect(titles.filter((t) => /collector collector/i.test(t))).toEqual([]);
  });

  it('have the length that a cord measures: the tube itself, where it begins elsewhere than its centerline', () => {
    const stepped = { id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 } as const;
    const header = resolveHeader({ ...oneRunner(ONE_BEND), flanges: [stepped] });
    const length = value(step(benchSteps(sampleMaking(header), header), 'r1/look'), 'Length along its middle');
    expect(length).toBe(toStep(header.runners[0]!.centerline!.length + 4, 0.5));
  });
});

describe('steps of a runner that is bent', () => {
  const steps = made('bent');
  const first = example.runners[0]!.id;

  it('count bends along the runner, from whichever end they are bent and behind a split too', () => {
    const bends = (t: Making['bent'][number]) => t.thinned.map(({ bend }) => bend);
    const [tube] = sampleMaking(resolveHeader(example)).bent;
    const names = (find?: (m: Making) => Making) => {
      const own = of(made('bent', {}, find), first);
      const mark = own.find(({ task }) => task === 'mark')!;
      const titles = own.filter(({ task }) => task === 'bend').map(({ title }) => title.split(' ')[1]);
      expect(mark.figures.map(({ name }) => name.split(' ')[1])).toEqual(titles);
      return titles.map(Number);
    };
    expect(names()).toEqual(bends(tube!));
    const clampable = { fromStart: false, fromEnd: true };
    expect(names((m) => ({ ...m, bent: m.bent.map((t) => ({ ...t, clampable })) }))).toEqual(bends(tube!).reverse());
    const later = (t: Making['bent'][number]) => ({
      ...t,
      thinned: t.thinned.map((b) => ({ ...b, bend: b.bend + 2 })),
    });
    expect(names((m) => ({ ...m, bent: m.bent.map(later) }))).toEqual(bends(tube!).map((bend) => bend + 2));
  });

  it('do not turn a tube that has no bend', () => {
    const straight = made('bent', {}, (m) => ({
      ...m,
      bent: m.bent.map((t) => ({ ...t, fromStart: t.fromStart.slice(-1), fromEnd: t.fromEnd.slice(-1) })),
    }));
    expect(of(steps, first).map(({ id }) => id)).toContain(`${first}/clock/${first}`);
    expect(of(straight, first).filter(({ task }) => task === 'fit')).toEqual([]);
  });

  it('ask for argon where tubes are joined at a split, and not where none are', () => {
    const purges = (find?: (m: Making) => Making) =>
      made('bent', madeOf('stainless-304'), find).filter(({ id }) => id === `${first}/purge`);
    expect(purges()).toEqual([]);
    const split = (m: Making): Making => ({ ...m, bent: m.bent.flatMap((t) => [t, { ...t, id: `${t.id}b` }]) });
    expect(purges(split)).toHaveLength(1);
  });

  it('come as cut, marked, bent, set, checked', () => {
    const own = of(steps, first);
    const bends = own.filter(({ task }) => task === 'bend').length;
    expect(bends).toBeGreaterThan(1);
    expect(own.map(({ task }) => task)).toEqual([
      'cut',
      'mark',
      ...Array.from({ length: bends }, () => 'bend'),
      'fit',
      'check',
      'check',
      'prove',
    ]);
  });

  it('mark and set every bend by the machine’s numbers', () => {
    const [tube] = sampleMaking(resolveHeader(example)).bent;
    const rows = tube!.fromStart.filter(({ angle }) => angle > 0);
    rows.forEach((row, i) => {
      const s = step(steps, `${first}/bend/${first}/${i + 1}`);
      expect(value(s, 'Clamp at mark')).toBe(toStep(row.mark, 0.5));
      expect(value(s, 'Set the bend to')).toBe(toStep(row.set, 0.5));
    });
  });

  it('go from the other end where only that one can be clamped, and warn where a clamp has no room', () => {
    const turned = made('bent', {}, (m) => ({
      ...m,
      bent: m.bent.map((t) => ({ ...t, clampable: { fromStart: false, fromEnd: true } })),
    }));
    expect(step(turned, `${first}/mark/${first}`).beside[0]!.value).toMatch(/goes out/);
    expect(step(steps, `${first}/mark/${first}`).beside[0]!.value).toMatch(/comes in/);
    const loose = made('bent', {}, (m) => ({
      ...m,
      bent: m.bent.map((t) => ({ ...t, fromStart: t.fromStart.map((r) => ({ ...r, clamps: false, grip: 12.3 })) })),
    }));
    expect(step(loose, `${first}/bend/${first}/1`).care.join()).toContain('12.5 mm');
  });
});

describe('numbers as a tape reads them', () => {
  it.each([
    [43.26, 0.5, 'mm', '43.5'],
    [43.24, 1, 'mm', '43'],
    [43.7, 0.1, 'mm', '43.7'],
    [43.7, 0.25, 'mm', '43.75'],
    [25.4 * 1.71875, 25.4 / 32, 'in', '1 23/32'],
    [25.4 * 2, 25.4 / 64, 'in', '2'],
    [-25.4 * 0.5, 25.4 / 16, 'in', '−1/2'],
    [43.5, 0.5, 'in', '1 23/32'],
    [43.5, 0.1, 'in', '1.713'],
    [127, 30, 'in', '5'],
    [25.4, 1e-6, 'in', '1.000'],
    [-0.1, 0.5, 'mm', '0.0'],
  ] as const)('%f by %f in %s: %s', (mm, tape, display, said) => {
    expect(tapeFigure(mm, { tape, display })).toBe(said);
  });

  it('stay what they were once rounded: a step keeps rounded numbers, and reads as paper does', () => {
    for (const display of ['mm', 'in'] as const)
      for (const tape of [0.1, 0.25, 0.5, 1, 25.4 / 64, 25.4 / 32])
        for (let mm = 0.03; mm < 90; mm += 1.37) {
          const steps = { tape, dial: 0.5, display };
          const { value } = createUnits(resolveHeader({ ...example, display, workshop: steps })).length('x', mm);
          expect(tapeFigure(Number(value), steps)).toBe(tapeFigure(mm, steps));
        }
  });

  it('add up: what a piece is turned in all is the sum of the turns, as on paper', () => {
    const design = { ...example, workshop: { ...example.workshop, dial: 5 } };
    const header = resolveHeader(design);
    const [tube] = sampleMaking(header).welded;
    const own = benchSteps(sampleMaking(header), header).filter(({ id }) => id.startsWith(`${tube!.runner}/turn/`));
    expect(own.length).toBeGreaterThan(2);
    let sum = 0;
    own.forEach(({ figures, beside }, i) => {
      const [turn] = figures;
      sum += (turn!.kind === 'angle' && turn!.way === 'counter-clockwise' ? -1 : 1) * Number(turn!.value);
      if (i > 0) expect(beside[0]!.value).toBe(((sum % 360) + 360) % 360);
    });
  });
});

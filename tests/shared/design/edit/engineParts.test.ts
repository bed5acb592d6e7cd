/** Edits of what the engine model takes: a part is put in place, refused with its place, or taken away. */
import { readFileSync } from 'node:fs';
import { expect, it, test } from 'vitest';
import {
  type Edited,
  setAir,
  setBaseline,
  setCast,
  setCombustion,
  setCylinders,
  setFiringAngles,
  setFiringOrder,
  setFitted,
  setFlow,
  setIntake,
  setLifts,
  setSketch,
  setTailpipe,
} from '../../../../shared/design/edit';
import { parseDesign } from '../../../../shared/design/parse';
import type { Design } from '../../../../shared/design/types';

const design = parseDesign(
  readFileSync(new URL('../../../documents/v1/every-field.evenrun.json', import.meta.url), 'utf8'),
);
const bare: Design = { ...design, engine: {}, ports: [], flanges: [], runners: [], sensors: [] };

function done(edited: Edited): Design {
  if (!edited.ok) throw new Error(`${edited.refusal.path}: ${edited.refusal.found}; ${edited.refusal.allowed}`);
  return edited.design;
}
const where = (edited: Edited): string => (edited.ok ? 'done' : edited.refusal.path);

const ofEngine = {
  firingAngles: [setFiringAngles, [0, 240, 470], [0, 240]],
  intake: [setIntake, { runnerLength: 300 }, { runnerLength: -300 }],
  combustion: [setCombustion, { lambda: 0.9 }, { lambda: 13 }],
  air: [setAir, { temperature: 30 }, { temperature: 300 }],
  fitted: [setFitted, { flow: 0.9 }, { flow: 2 }],
  // biome-ignore lint/suspicious/noExplicitAny: each edit has a type of its own, and the table has them all
} satisfies Record<string, readonly [any, unknown, unknown]>;

test.each(Object.entries(ofEngine))('%s', (key, [set, good, bad]) => {
  const edit = set as (design: Design, value: unknown) => Edited;
  expect(done(edit(design, good)).engine).toEqual({ ...design.engine, [key]: good });
  expect(where(edit(design, bad))).toMatch(new RegExp(`^engine/${key}`));
  expect(done(edit(design, undefined)).engine).not.toHaveProperty(key);
});

const ofExhaust = {
  tailpipe: [setTailpipe, { length: 2000, bore: 48 }, { length: 0, bore: 48 }],
  cast: [setCast, { branch: { length: 90, bore: 32 }, shared: { length: 200, bore: 44 } }, { branch: {} }],
  sketch: [setSketch, { ...design.exhaust!.sketch!, arrangement: 'all-into-one' }, { arrangement: 'all-into-one' }],
  // biome-ignore lint/suspicious/noExplicitAny: each edit has a type of its own, and the table has them all
} satisfies Record<string, readonly [any, unknown, unknown]>;

test.each(Object.entries(ofExhaust))('%s', (key, [set, good, bad]) => {
  const edit = set as (design: Design, value: unknown) => Edited;
  expect(done(edit(design, good)).exhaust).toEqual({ ...design.exhaust, [key]: good });
  expect(where(edit(design, bad))).toMatch(new RegExp(`^exhaust/${key}/`));
  expect(done(edit(design, undefined)).exhaust).not.toHaveProperty(key);
});

test('a curve and a bench table of a valve', () => {
  const lifts = [
    [-20, 0],
    [100, 9],
    [230, 0],
  ] as const;
  expect(done(setLifts(design, 'exhaustValve', lifts)).engine!.exhaustValve!.lifts).toEqual(lifts);
  expect(done(setLifts(design, 'intakeValve', undefined)).engine!.intakeValve).not.toHaveProperty('lifts');
  expect(done(setFlow(design, 'exhaustValve', [[0.1, 0.6]])).engine!.exhaustValve!.flow).toEqual([[0.1, 0.6]]);
  expect(where(setFlow(design, 'exhaustValve', [[0.1, 6]]))).toBe('engine/exhaustValve/flow/0/1');
  // Without a valve there is nothing that a curve could be of.
  expect(where(setLifts(bare, 'intakeValve', lifts))).toBe('engine/intakeValve/count');
});

it('puts a measured curve in place and takes it away', () => {
  const points = [
    [2000, 100],
    [4000, 120],
    [6000, 110],
  ] as const;
  expect(done(setBaseline(design, { points })).engine!.baseline).toEqual({ points });
  expect(where(setBaseline(design, { points: points.slice(0, 1) }))).toBe('engine/baseline/points');
  expect(done(setBaseline(design, undefined)).engine).not.toHaveProperty('baseline');
});

it('drops firing angles of another number of cylinders, and keeps them where the order alone changes', () => {
  const with3: Design = { ...bare, engine: { cylinders: 3, firingOrder: [1, 3, 2], firingAngles: [0, 235, 480] } };
  expect(done(setCylinders(with3, 4)).engine).not.toHaveProperty('firingAngles');
  expect(done(setFiringOrder(with3, [1, 2, 3])).engine!.firingAngles).toEqual([0, 235, 480]);
  expect(done(setFiringOrder(with3, [1, 2, 3, 4])).engine).not.toHaveProperty('firingAngles');
});

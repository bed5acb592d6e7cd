/** Hiding, isolating and keeping measurements: pure state, forgotten with the design. */
import { beforeEach, describe, expect, it } from 'vitest';
import { resolveHeader } from '../../geometry';
import { documents } from '../../src/app/document';
import { countHidden } from '../../src/app/viewport/hideable';
import { withoutHidden } from '../../src/app/viewport/seen';
import { hideKey, isHidden, useViewState } from '../../src/app/viewState';
import { header as smallHeader } from '../geometry/check/header';

const state = () => useViewState.getState();
const design = smallHeader({ surroundings: [{ id: 'head', shape: 'box', min: [0, -90, 0], max: [100, -60, 60] }] });
const header = resolveHeader(design);

beforeEach(() => documents.open(design, 'small.evenrun.json'));

describe('hide and isolate', () => {
  it('hides and shows by key; parts belong to their whole', () => {
    state().setHidden([hideKey({ kind: 'runner', id: 'r1', bend: 2 })!, 'surrounding/head'], true);
    expect(isHidden(state(), 'runner/r1')).toBe(true);
    expect(isHidden(state(), 'runner/r2')).toBe(false);
    expect(countHidden(header, state())).toBe(2);
    state().setHidden(['runner/r1'], false);
    expect(countHidden(header, state())).toBe(1);
    expect(hideKey({ kind: 'group', id: 'primaries' })).toBeNull();
  });

  it('isolates, lets single things back in, and shows all', () => {
    state().isolate(['runner/r2']);
    // r1, the collector and the head.
    expect(countHidden(header, state())).toBe(3);
    state().setHidden(['merge/m1'], false);
    expect(isHidden(state(), 'merge/m1')).toBe(false);
    state().setHidden(['runner/r2'], true);
    expect(countHidden(header, state())).toBe(3);
    state().isolate(null);
    expect(countHidden(header, state())).toBe(0);
  });

  it('leaves the header itself alone where nothing is hidden, and filters where something is', () => {
    expect(withoutHidden(header, state())).toBe(header);
    state().setHidden(['runner/r1'], true);
    expect(withoutHidden(header, state()).runners.map((r) => r.runner.id)).toEqual(['r2']);
  });

  it('forgets all of it when a design is opened', () => {
    state().setHidden(['runner/r1'], true);
    state().setCut('x', { on: true, at: 3 });
    state().take({ kind: 'port', id: 'p1' });
    documents.open(design, 'again.evenrun.json');
    documents.open({ ...design, title: 'other' }, 'other.evenrun.json');
    expect([state().hidden.size, state().cuts.x.on, state().from]).toEqual([0, false, null]);
  });
});

it('two takes make a measurement; each can be forgotten', () => {
  const [a, b, c] = ['p1', 'p2', 'p1'].map((id) => ({ kind: 'port', id }) as const);
  for (const thing of [a!, b!, b!, c!]) state().take(thing);
  expect(state().measured.map((m) => [m.a.kind, m.key])).toEqual([
    ['port', 1],
    ['port', 2],
  ]);
  state().forget(1);
  expect(state().measured.map((m) => m.key)).toEqual([2]);
  state().forgetAll();
  expect(state().measured).toEqual([]);
});

it('measures nothing while the parts are apart, and puts them together to measure', () => {
  const { explode, setMeasuring } = useViewState.getState();
  setMeasuring(true);
  explode(2);
  expect(useViewState.getState()).toMatchObject({ exploded: 1, measuring: false });
  setMeasuring(true);
  expect(useViewState.getState()).toMatchObject({ exploded: 0, measuring: true });
  explode(0);
  expect(useViewState.getState().measuring).toBe(true);
  setMeasuring(false);
});

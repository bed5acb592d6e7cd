/** Laying as the app goes through it: the document is untouched until a layout is kept, which is one step of history. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Layout } from '../../../geometry';
import { writeDesign } from '../../../shared/design/write';
import { documents } from '../../../src/app/document';
import { history } from '../../../src/app/history';
import { useJobs } from '../../../src/app/jobs';
import {
  cancelSearch,
  choicesOf,
  choose,
  closeLay,
  keepChosen,
  openLay,
  point,
  previewed,
  put,
  searchOn,
  startSearch,
  stopSearch,
  useLay,
} from '../../../src/app/route/state';
import { goingBy, layout } from './layouts';
import { emptyRound, fakeMachine } from './machine';

const BEGIN = goingBy(0);
const settled = () => documents.store.getState().settled!;
const steps = () => history.store.getState().past.map((s) => s.label);
const shown = () => previewed(useLay.getState());
const bytes = () => writeDesign(settled());

function searching() {
  const fake = fakeMachine(2);
  openLay();
  startSearch(fake.machine);
  return fake;
}

/** A search that is over, having found these. */
function found(...layouts: Layout[]) {
  const fake = searching();
  fake.reply(0, { n: 0, round: { layouts, attempt: null }, cut: false });
  fake.pass(60_000);
  return fake;
}

beforeEach(() => documents.open(BEGIN, 'a.evenrun.json'));

describe('laying the header', () => {
  it('draws the best so far and leaves the document alone', () => {
    const before = bytes();
    const { reply } = searching();
    reply(0, { n: 0, seen: layout(100, 200) });
    reply(1, { n: 1, seen: layout(200, 190) });
    stopSearch();
    expect(shown()?.angle).toBe(190);
    expect(documents.store.getState().design).toBe(BEGIN);
    expect(bytes()).toBe(before);
    expect(steps()).toEqual([]);
  });

  it('draws what comes while it searches, not only at the end', async () => {
    const { reply } = searching();
    expect(shown()).toBeNull();
    reply(0, { n: 0, seen: layout(100, 200) });
    await expect.poll(() => shown()?.angle).toBe(200);
    expect(useLay.getState().search?.running).toBe(true);
    cancelSearch();
  });

  it.each([
    ['cancelled', cancelSearch],
    ['closed', closeLay],
    ['given up for another file', () => useJobs.getState().cancel()],
  ])('leaves no trace when it is %s midway', (_, leave) => {
    const before = bytes();
    const { reply, workers } = searching();
    reply(0, { n: 0, seen: layout(100, 200) });
    leave();
    expect(workers.every((w) => w.ended)).toBe(true);
    reply(1, { n: 1, seen: layout(200, 90) });
    expect(shown()).toBeNull();
    expect(useLay.getState().search).toBeNull();
    expect(useJobs.getState().running).toBeNull();
    expect(settled()).toBe(BEGIN);
    expect(bytes()).toBe(before);
    expect(steps()).toEqual([]);
  });

  it('keeps a layout that is not the first as one step, and undo brings the former back', () => {
    found(layout(100, 200), layout(200, 220), layout(300, 240));
    expect(choicesOf(useLay.getState().search!.harvest).map((l) => l.angle)).toEqual([200, 220, 240]);
    choose(1);
    keepChosen();
    expect(settled().runners).toEqual(goingBy(200).runners);
    expect(steps()).toEqual(['Lay anew']);
    expect(useLay.getState()).toMatchObject({ open: false, search: null });
    expect(shown()).toBeNull();
    history.undo();
    expect(settled()).toBe(BEGIN);
  });

  it('draws the row that is pointed at, else the one that is chosen', () => {
    found(layout(100, 200), layout(200, 220));
    expect(shown()?.angle).toBe(200);
    point(1);
    expect(shown()?.angle).toBe(220);
    point(null);
    expect(shown()?.angle).toBe(200);
    choose(1);
    expect(shown()?.angle).toBe(220);
  });

  it('keeps what else was changed meanwhile that laying does not depend on', () => {
    found(layout(100, 200));
    documents.apply({ ...settled(), title: 'Renamed', display: 'in' }, 'Rename');
    keepChosen();
    expect(settled()).toMatchObject({ title: 'Renamed', display: 'in', runners: goingBy(100).runners });
    expect(steps()).toEqual(['Rename', 'Lay anew']);
  });

  it('does not offer layouts of a design that became another', () => {
    const fake = searching();
    fake.reply(0, { n: 0, seen: layout(100, 200) });
    documents.apply({ ...settled(), clearance: { tubeToTube: 9 } }, 'More clearance');
    expect(fake.workers.every((w) => w.ended)).toBe(true);
    expect(useLay.getState()).toMatchObject({ open: true, search: null, overtaken: true });
    expect(shown()).toBeNull();
    keepChosen();
    expect(steps()).toEqual(['More clearance']);
  });

  it('is over where another design is opened', () => {
    const fake = searching();
    documents.open(goingBy(50), 'b.evenrun.json');
    expect(fake.workers.every((w) => w.ended)).toBe(true);
    expect(useLay.getState()).toMatchObject({ open: false, search: null, overtaken: false });
  });

  it('is one long job among others: it waits for none and lets none begin beside it', () => {
    searching();
    expect(useJobs.getState().running).toBe('lay');
    cancelSearch();
    useJobs.setState({ running: 'balance' });
    expect(searching().workers).toEqual([]);
    expect(useLay.getState().search).toBeNull();
    useJobs.setState({ running: null });
  });

  it('offers the best attempt where nothing holds, to be kept all the same as one step', () => {
    const fake = searching();
    fake.reply(0, { n: 0, round: { layouts: [], attempt: layout(100, 200, 2) }, cut: false });
    fake.pass(60_000);
    const { harvest } = useLay.getState().search!;
    expect(harvest.layouts).toEqual([]);
    expect(choicesOf(harvest)[0]!.report.problems.map((p) => p.message)).toEqual([
      'Runner r1 is 1 mm too close.',
      'Runner r1 is 2 mm too close.',
    ]);
    keepChosen();
    expect(settled().runners).toEqual(goingBy(100).runners);
    expect(steps().length).toBe(1);
  });

  it('keeps nothing while it searches, nor where nothing was found', () => {
    searching().reply(0, { n: 0, seen: layout(100, 200) });
    keepChosen();
    cancelSearch();
    found();
    keepChosen();
    expect(settled()).toBe(BEGIN);
    expect(useLay.getState().open).toBe(true);
  });

  it('keeps nothing in a tab that only looks, and the layouts stay', () => {
    found(layout(100, 200));
    documents.setReadOnly(true);
    keepChosen();
    expect(settled()).toBe(BEGIN);
    expect(useLay.getState().search).not.toBeNull();
    documents.setReadOnly(false);
  });

  it('says why a worker broke off, and keeps what was found until then', () => {
    const { reply } = searching();
    reply(0, { n: 0, seen: layout(100, 200) });
    reply(1, { failed: 'no' });
    expect(useLay.getState().search).toMatchObject({ running: false, failed: 'no' });
    expect(shown()?.angle).toBe(200);
    expect(useJobs.getState().running).toBeNull();
  });

  it('searches on with rounds that were not run, and what was found stays', () => {
    found(layout(100, 200));
    const more = fakeMachine(2);
    searchOn(more.machine);
    expect([more.rounds(0), more.rounds(1)]).toEqual([[1], [2]]);
    more.reply(0, { n: 1, round: { layouts: [layout(300, 180)], attempt: null }, cut: false });
    stopSearch();
    expect(choicesOf(useLay.getState().search!.harvest).map((l) => l.angle)).toEqual([180, 200]);
    expect(useLay.getState().search!.rounds).toBe(2);
  });

  it('ends by itself after the rounds asked for', () => {
    openLay();
    put({ rounds: 2 });
    const fake = fakeMachine(2);
    startSearch(fake.machine);
    fake.reply(1, emptyRound(1));
    fake.reply(0, emptyRound(0));
    expect(useLay.getState().search).toMatchObject({ running: false, rounds: 2 });
    put({ rounds: null });
  });

  it('hands the wishes to the router: seed, order, and inlets to be given out anew or not', () => {
    const asked = () => {
      const { workers, machine } = fakeMachine(1);
      startSearch(machine);
      cancelSearch();
      return workers[0]!.asked[0]!;
    };
    openLay();
    put({ seed: 4, inlets: 'firing' });
    expect(asked()).toMatchObject({ options: { seed: 4, order: 'firing', keepsShape: false } });
    put({ inlets: 'free' });
    expect(asked()).toMatchObject({ options: { order: 'free' }, design: { runners: [{ to: { merge: 'm1' } }] } });
    expect(JSON.stringify(asked())).not.toContain('"inlet":1');
    put({ inlets: 'given', seed: 1 });
    expect(JSON.stringify(asked())).toContain('"inlet":1');
  });

  it('opens with the way of the runners kept where that is asked for', () => {
    openLay(true);
    expect(useLay.getState().wish).toMatchObject({ keepsShape: true, inlets: 'given' });
    closeLay();
    openLay();
    expect(useLay.getState().wish).toMatchObject({ keepsShape: false, inlets: 'free' });
  });
});

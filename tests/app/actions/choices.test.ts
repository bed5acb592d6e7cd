/** What actions ask to choose from: steps of history told and gone to by number, examples as the app comes with them. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { chooseExample, chooseStep, exampleChoices, stepChoices } from '../../../src/app/actions/list/choices';
import { type Choice, closeSheet, useSheet } from '../../../src/app/actions/list/listState';
import { actionById, isReady } from '../../../src/app/actions/list/registry';
import { searchActions } from '../../../src/app/actions/list/search';
import { documents } from '../../../src/app/document';
import { history } from '../../../src/app/history';
import { useNotice } from '../../../src/app/notices';
import { titled } from '../designs';

const offered = (): Choice => {
  const { open } = useSheet.getState();
  if (open === null || typeof open === 'string') throw new Error(`Nothing to choose from: ${open}`);
  return open;
};

afterEach(() => {
  closeSheet();
  vi.unstubAllGlobals();
});

describe('steps of history', () => {
  const title = () => documents.store.getState().settled!.title;
  const jump = actionById('history.jump');

  beforeEach(() => {
    documents.open(titled('a'), 'a.evenrun.json', new Map(), { id: 'steps' });
    for (const t of ['b', 'c', 'd']) documents.apply(titled(t), `to ${t}`);
  });

  it('are listed the newest first, what was taken back apart, and where we stand is not to be gone to', () => {
    history.undo();
    const steps = stepChoices(history.store.getState());
    expect(steps.map((s) => [s.name, s.group, isReady(s)])).toEqual([
      ['to d', 'Taken back', true],
      ['to c', 'Made', false],
      ['to b', 'Made', true],
      ['As opened', 'Made', true],
    ]);
    expect(new Set(steps.map((s) => s.id)).size).toBe(steps.length);
  });

  it('are gone to, back and forth', () => {
    chooseStep();
    const go = (name: string) =>
      offered()
        .actions.find((s) => s.name === name)!
        .run();
    for (const [name, there] of [
      ['As opened', 'a'],
      ['to c', 'c'],
      ['to b', 'b'],
      ['to d', 'd'],
    ] as const) {
      go(name);
      expect(title()).toBe(there);
      expect(history.store.getState().past.length + history.store.getState().future.length).toBe(3);
    }
  });

  it('say so where the first of them are no longer kept', () => {
    expect(stepChoices({ past: [], future: [], dropped: 2 }).map((s) => s.name)).toEqual(['As it was here']);
  });

  it('can be asked for once there are any', () => {
    expect(isReady(jump)).toBe(true);
    jump.run();
    expect(offered().actions).toHaveLength(4);
    history.jump(0);
    expect(isReady(jump)).toBe(true);
    documents.open(titled('z'), 'z.evenrun.json', new Map(), { id: 'no steps' });
    expect(isReady(jump)).toBe(false);
  });
});

describe('examples', () => {
  const index = readFileSync(new URL('../../../public/examples/index.json', import.meta.url), 'utf8');
  const examples = JSON.parse(index) as { file: string; title: string; summary: string }[];

  it('are offered by title and found by what is said of them', async () => {
    vi.stubGlobal('fetch', async (url: string) => new Response(url.endsWith('examples/index.json') ? index : '[]'));
    await chooseExample();
    expect(offered().actions.map((a) => a.name)).toEqual(examples.map((e) => e.title));
    expect(searchActions(offered().actions, 'firing pairs').map((a) => a.name)).toEqual(['Road four, 4-2-1']);
  });

  it('ask for the file of the one that is chosen', async () => {
    const asked: string[] = [];
    vi.stubGlobal('fetch', async (url: string) => {
      asked.push(url);
      return new Response('', { status: 404 });
    });
    for (const choice of exampleChoices(examples)) await choice.run();
    expect(asked.map((url) => url.split('/').at(-1))).toEqual(examples.map((e) => e.file));
  });

  it('that cannot be listed leave the sheet shut and say why', async () => {
    vi.stubGlobal('fetch', async () => new Response('', { status: 404 }));
    await chooseExample();
    expect(useSheet.getState().open).toBeNull();
    expect(useNotice.getState().notice?.lines).toEqual(['The list of examples is missing (404).']);
  });
});

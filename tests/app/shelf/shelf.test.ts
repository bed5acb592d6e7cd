/** Several designs on a shelf, in one page and in two: nothing is lost by leaving, copying, deleting, or by a second page. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { PATIENCE } from '../../../src/app/shelf/holds';
import { AGAIN, SOON } from '../../../src/app/shelf/keeper';
import { copyName, titleOf } from '../../../src/app/shelf/names';
import { memoryBackend } from '../../../src/app/storage/backend';
import { designWith } from '../designs';
import { fakeBrowser } from './pages';

const design = (title: string) => ({ ...designWith(undefined), title });
const FILE = 'four.evenrun.json';
const NONE = new Map();

let browser: ReturnType<typeof fakeBrowser>;
let page: ReturnType<typeof browser.openPage>;
beforeEach(() => {
  browser = fakeBrowser();
  page = browser.openPage();
});

const titles = () => page.state.getState().designs.map(titleOf);
const edit = (title: string, of = page) => of.documents.apply({ ...of.now().settled!, title }, 'Edit');

describe('an edit', () => {
  it('is kept soon after, and is there in the next page', async () => {
    const id = page.shelf.open(design('a'), FILE, NONE, 'made');
    edit('b');
    expect(page.shelf.waits()).toBe(true);
    page.timers.run(SOON);
    await vi.waitFor(() => expect(page.state.getState().designs).toHaveLength(1));
    await page.shelf.flush();
    expect(page.shelf.waits()).toBe(false);
    page.shelf.stop();
    const next = fakeBrowser(browser.backend).openPage();
    expect(await next.shelf.start([])).toBe(true);
    expect(next.now()).toMatchObject({ id, fileName: FILE, saved: null, readOnly: false });
    expect(next.now().settled).toEqual(design('b'));
  });

  it('in the middle of a gesture is nobody’s decision, and is not kept', async () => {
    const id = page.shelf.open(design('a'), FILE, NONE, 'made');
    page.documents.mark()!.write(design('half-way'));
    await page.shelf.flush();
    expect(titleOf((await page.kept.read(id))!)).toBe('a');
  });

  it('that cannot be written is told of, held on to, and written when there is room', async () => {
    const sound = memoryBackend();
    let full = true;
    const put = (key: string, value: unknown) =>
      full ? Promise.reject(new DOMException('no room', 'QuotaExceededError')) : sound.put(key, value);
    page = fakeBrowser({ ...sound, put }).openPage();
    const id = page.shelf.open(design('a'), FILE, NONE, 'made');
    expect(await page.shelf.flush()).toBe(false);
    expect(page.state.getState().trouble?.kind).toBe('full');
    expect(page.shelf.waits()).toBe(true);
    full = false;
    page.timers.run(AGAIN);
    await vi.waitFor(() => expect(page.state.getState().trouble).toBeNull());
    expect(titleOf((await page.kept.read(id))!)).toBe('a');
  });
});

describe('designs', () => {
  it('are left and returned to as they were, the very objects, so that history still fits', async () => {
    const a = page.shelf.open(design('a'), FILE, NONE, 'made');
    edit('a, edited');
    const { settled } = page.now();
    page.shelf.open(design('b'), FILE, NONE, 'made');
    await page.shelf.flush();
    await page.shelf.returnTo(a);
    expect(page.now().settled).toBe(settled);
    expect(titles().sort()).toEqual(['a, edited', 'b']);
  });

  it('of the examples go when they are left unchanged, and stay when they were changed or a version was kept', async () => {
    page.shelf.open(design('as it came'), FILE, NONE, 'example');
    await page.shelf.flush();
    page.shelf.open(design('changed'), FILE, NONE, 'example');
    await page.shelf.flush();
    edit('changed since');
    page.shelf.open(design('with a version'), FILE, NONE, 'example');
    await page.shelf.keepVersion('first');
    await page.shelf.flush();
    page.shelf.open(design('last'), FILE, NONE, 'made');
    await page.shelf.flush();
    await vi.waitFor(() => expect(titles()).not.toContain('as it came'));
    expect(titles().sort()).toEqual(['changed since', 'last', 'with a version']);
  });

  it('of the examples stay when they were changed at once, before anything of them was kept', async () => {
    page.shelf.open(design('as it came'), FILE, NONE, 'example');
    edit('changed at once');
    page.shelf.open(design('last'), FILE, NONE, 'made');
    await page.shelf.flush();
    // Longer than leaving takes.
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(titles().sort()).toEqual(['changed at once', 'last']);
    expect((await page.kept.list()).map(titleOf).sort()).toEqual(['changed at once', 'last']);
  });

  it('are copied under a name of their own, and renamed open or not', async () => {
    const a = page.shelf.open(design('a'), FILE, NONE, 'file');
    await page.shelf.duplicate(a);
    await page.shelf.flush();
    expect(page.now()).toMatchObject({ settled: { title: 'a, copy' }, saved: null });
    await page.shelf.rename(a, 'first');
    expect(titles().sort()).toEqual(['a, copy', 'first']);
    expect((await page.kept.read(a))!.inFile).toBe(false);
    expect(copyName('a, copy', new Set(['a, copy']))).toBe('a, copy 2');
  });

  it('that are deleted are put back with their versions and their file', async () => {
    const link = { handle: { name: FILE }, modified: 5 };
    const a = page.shelf.open(design('a'), FILE, NONE, 'file', link);
    await page.shelf.keepVersion('first');
    page.shelf.open(design('b'), FILE, NONE, 'made');
    await page.shelf.flush();
    await page.shelf.remove(a, async () => {});
    expect(await page.kept.list()).toHaveLength(1);
    expect(await page.kept.versions(a)).toEqual([]);
    await page.shelf.restore();
    await page.shelf.returnTo(a);
    expect(page.now().settled!.title).toBe('a');
    await vi.waitFor(() => expect(page.state.getState().versions.map((v) => v.name)).toEqual(['first']));
    expect(await page.kept.link(a)).toEqual(link);
  });
});

describe('versions', () => {
  it('are gone back to as one step, removed and put back', async () => {
    page.shelf.open(design('a'), FILE, NONE, 'made');
    await page.shelf.keepVersion('first');
    edit('b');
    const [first] = page.state.getState().versions;
    page.shelf.goBackTo(first!);
    expect(page.now()).toMatchObject({ settled: { title: 'a' }, cause: { kind: 'edit', label: 'Go back to “first”' } });
    await page.shelf.removeVersion(first!);
    expect(page.state.getState().versions).toEqual([]);
    await page.shelf.putBackVersion(first!);
    expect(page.state.getState().versions).toEqual([first]);
  });
});

describe('a second page', () => {
  /** Both with one design open, the first at work on it. */
  async function both() {
    const id = page.shelf.open(design('a'), FILE, NONE, 'made');
    await page.shelf.flush();
    const second = browser.openPage();
    await second.shelf.start([id]);
    return { id, second };
  }

  it('looks on, refuses edits, and follows what the first does', async () => {
    const { second } = await both();
    expect(second.now().readOnly).toBe(true);
    expect(edit('mine', second)).toBe(false);
    edit('theirs');
    await page.shelf.flush();
    await vi.waitFor(() => expect(second.now()).toMatchObject({ settled: { title: 'theirs' }, readOnly: true }));
  });

  it('takes over with the edit made last, though it was not kept yet', async () => {
    const { second } = await both();
    edit('a moment ago');
    second.shelf.takeOver();
    await vi.waitFor(() => expect(second.now().readOnly).toBe(false));
    expect(second.now().settled!.title).toBe('a moment ago');
    expect(page.now().readOnly).toBe(true);
    expect(edit('too late')).toBe(false);
  });

  it('is not kept waiting by a first that hangs: what was kept is taken, and the first may not write any more', async () => {
    page = browser.openPage({ hung: true });
    const { id, second } = await both();
    edit('never kept');
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    try {
      second.shelf.takeOver();
      await vi.advanceTimersByTimeAsync(PATIENCE - 1);
      expect(second.now().readOnly).toBe(true);
      await vi.advanceTimersByTimeAsync(1);
    } finally {
      vi.useRealTimers();
    }
    await vi.waitFor(() => expect(second.now().readOnly).toBe(false));
    expect(second.now()).toMatchObject({ id, settled: { title: 'a' } });
    expect(edit('taken over', second)).toBe(true);
    expect(page.now().readOnly).toBe(true);
    expect(edit('too late')).toBe(false);
  });

  it('has its turn when the first leaves, and cannot delete under its hands before', async () => {
    const { id, second } = await both();
    await expect(second.shelf.remove(id, async () => {})).rejects.toThrow('another tab');
    page.shelf.open(design('b'), FILE, NONE, 'made');
    await vi.waitFor(() => expect(second.now()).toMatchObject({ id, readOnly: false }));
    expect(edit('now mine', second)).toBe(true);
  });

  it('works on a copy beside it', async () => {
    const { id, second } = await both();
    await second.shelf.duplicate(id);
    expect(second.now()).toMatchObject({ settled: { title: 'a, copy' }, readOnly: false });
    expect(edit('apart', second)).toBe(true);
    expect(page.now().settled!.title).toBe('a');
  });
});

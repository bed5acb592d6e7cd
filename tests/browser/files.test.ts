/**
 * Work that outlasts its page, in a real browser: kept through a hard kill, one tab at a time, storage refused or full,
 * several designs with their steps, history jumped in, also from the list of actions.
 */
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, withoutPicture } from './page';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const inInches = (page: Page) => page.getByRole('button', { name: 'Inches', pressed: true });
const inMillimetres = (page: Page) => page.getByRole('button', { name: 'Millimetres', pressed: true });
const inches = (page: Page) => page.getByRole('button', { name: 'Inches' }).click();

async function ready(page: Page): Promise<Page> {
  await page.getByRole('region', { name: 'Runners', exact: true }).waitFor();
  return page;
}

async function another(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(bench.url);
  return ready(page);
}

async function example(page: Page, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Examples' }).click();
  await page.getByRole('list', { name: 'Examples' }).getByRole('button', { name: title }).click();
  await heading(page).getByText(title).waitFor();
}

async function shelf(page: Page) {
  const button = page.getByRole('button', { name: 'Designs' });
  if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click();
  return page.getByRole('list', { name: 'Designs' });
}

/** Whether the browser's database, read past the app, holds something that says this. */
const holds = (page: Page, says: string): Promise<boolean> =>
  page.evaluate(async (text) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open('evenrun');
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const values = await new Promise<unknown[]>((resolve, reject) => {
      const request = database.transaction('kept').objectStore('kept').getAll();
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    database.close();
    return values.some((value) => typeof value === 'string' && value.includes(text));
  }, says);

/** Until the edit made last lies there. Asked from here: a wait within the page takes a promise for a yes. */
const kept = (page: Page, says: string): Promise<void> =>
  expect.poll(() => holds(page, says), { timeout: 10_000 }).toBe(true);

const INCHES_KEPT = String.raw`\"display\": \"in\"`;

/** Ends the page's process as a crash does: no handler of its own runs. */
async function kill(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  session.send('Page.crash').catch(() => {});
  await crashed;
  await page.close();
}

describe('a page that is killed', () => {
  it('comes back with the edit made last, told apart from what a file holds', async () => {
    const { page } = await bench.newPage({}, withoutPicture);
    await ready(page);
    const title = await heading(page).textContent();
    await inches(page);
    await kept(page, INCHES_KEPT);
    await kill(page);
    const next = await another(page.context());
    await inInches(next).waitFor();
    expect(await heading(next).textContent()).toBe(title);
    await next.getByText('edited', { exact: true }).waitFor();
    await next.context().close();
  });
});

describe('two tabs on one design', () => {
  it('have one that works on it; the other says so, and takes it over with all that was done', async () => {
    const { page: first } = await bench.newPage({}, withoutPicture);
    await ready(first);
    await inches(first);
    await kept(first, INCHES_KEPT);
    const second = await another(first.context());
    await second.getByText('Open in another tab.').waitFor();
    await inInches(second).waitFor();
    await second.getByRole('button', { name: 'Millimetres' }).click();
    await inInches(second).waitFor();

    // Done a moment before the other asks for it, so hardly kept yet.
    await first.getByRole('button', { name: 'Undo: Show inches' }).click();
    await second.getByRole('button', { name: 'Take it over' }).click();
    await second.getByText('Open in another tab.').waitFor({ state: 'detached' });
    await inMillimetres(second).waitFor();
    await first.getByText('Open in another tab.').waitFor();
    await inches(second);
    await inInches(second).waitFor();
    // The first follows what the other does, and has its turn when that one goes.
    await inInches(first).waitFor();
    await second.close();
    await first.getByText('Open in another tab.').waitFor({ state: 'detached' });
    await inInches(first).waitFor();
    await first.context().close();
  });

  it('can go apart on a copy', async () => {
    const { page: first } = await bench.newPage({}, withoutPicture);
    await ready(first);
    await inches(first);
    await kept(first, INCHES_KEPT);
    const second = await another(first.context());
    await second.getByRole('button', { name: 'Work on a copy' }).click();
    await heading(second)
      .getByText(/, copy$/)
      .waitFor();
    await second.getByRole('button', { name: 'Millimetres' }).click();
    await inMillimetres(second).waitFor();
    await inInches(first).waitFor();
    await first.context().close();
  });
});

describe('storage that is refused', () => {
  it('is said in place, and the app goes on with several designs and their edits', async () => {
    const { page } = await bench.newPage({}, withoutPicture);
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('refused', 'SecurityError');
      };
    });
    await page.reload();
    await ready(page);
    await page.getByText('Not kept: this browser stores nothing here.').waitFor();
    const title = (await heading(page).textContent())!;
    await inches(page);
    await example(page, 'Road four, 4-2-1');
    await (await shelf(page)).getByRole('button', { name: new RegExp(`^${title}`) }).click();
    await heading(page).getByText(title, { exact: true }).waitFor();
    await inInches(page).waitFor();
    await page.getByRole('button', { name: 'Undo: Show inches' }).click();
    await inMillimetres(page).waitFor();
    await page.context().close();
  });

  it('for want of room is said until there is room again', async () => {
    const { page } = await bench.newPage({}, withoutPicture);
    await ready(page);
    await page.evaluate(() => {
      const own = IDBObjectStore.prototype.put;
      Object.assign(window, { roomAgain: () => Object.assign(IDBObjectStore.prototype, { put: own }) });
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await inches(page);
    await page.getByText('Not kept: storage is full.').waitFor();
    await page.evaluate(() => (window as unknown as { roomAgain(): void }).roomAgain());
    await page.getByRole('button', { name: 'Millimetres' }).click();
    await inches(page);
    await page.getByText('Not kept: storage is full.').waitFor({ state: 'detached' });
    await kept(page, INCHES_KEPT);
    await page.context().close();
  });
});

describe('several designs', () => {
  it('keep their edits and steps; a deleted one is put back', async () => {
    const { page } = await bench.newPage({}, withoutPicture);
    await ready(page);
    const title = (await heading(page).textContent())!;
    await inches(page);
    await example(page, 'Road four, 4-2-1');
    // Changed, so that it stays when it is left.
    await inches(page);
    const list = await shelf(page);
    await list.getByRole('button', { name: new RegExp(`^${title}`) }).click();
    await inInches(page).waitFor();
    await page.getByRole('button', { name: 'Undo: Show inches' }).waitFor();

    await (await shelf(page)).getByRole('button', { name: `Delete ${title}` }).click();
    await page.getByText(`“${title}” deleted`).waitFor();
    await list.getByRole('button', { name: new RegExp(`^${title}`) }).waitFor({ state: 'detached', timeout: 4000 });
    await page.getByRole('button', { name: 'Put back' }).click();
    await list.getByRole('button', { name: new RegExp(`^${title}`) }).click();
    await heading(page).getByText(title, { exact: true }).waitFor();
    await inInches(page).waitFor();
    await page.context().close();
  });
});

describe('history', () => {
  it('is jumped in by mouse and by keys', async () => {
    const { page } = await bench.newPage({}, withoutPicture);
    await ready(page);
    await inches(page);
    await page.getByRole('button', { name: 'Millimetres' }).click();
    const past = page.getByRole('tab', { name: 'Past' });
    if ((await past.count()) > 0) await past.click();
    const steps = page.getByRole('region', { name: 'History' });
    await steps.getByRole('button', { name: /^Show inches/ }).click();
    await inInches(page).waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await inMillimetres(page).waitFor();
    expect(await steps.getByRole('button', { name: /taken back/ }).count()).toBe(2);
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    expect(await steps.getByRole('button', { name: /taken back/ }).count()).toBe(0);
    await page.context().close();
  });
});

describe('the list of actions', () => {
  it('starts from an example and goes back to a step, by keys alone', async () => {
    const { page } = await bench.newPage({}, withoutPicture);
    await ready(page);
    const choose = async (words: string, then: string, pick: string) => {
      await page.keyboard.press('Control+k');
      await page.getByRole('combobox', { name: 'Find an action' }).waitFor();
      await page.keyboard.type(words);
      await page.keyboard.press('Enter');
      await page.getByRole('combobox', { name: then }).waitFor();
      await page.keyboard.type(pick);
      await page.keyboard.press('Enter');
      await page.getByRole('combobox', { name: then }).waitFor({ state: 'detached' });
    };
    await choose('example', 'Find an example', 'road');
    await heading(page).getByText('Road four, 4-2-1').waitFor();
    await inches(page);
    await page.getByRole('button', { name: 'Millimetres' }).click();
    await inMillimetres(page).waitFor();
    await choose('step of history', 'Find a step', 'inches');
    await inInches(page).waitFor();
    await choose('step of history', 'Find a step', 'opened');
    await inMillimetres(page).waitFor();
    await page.getByRole('button', { name: 'Redo: Show inches' }).waitFor();
    await page.context().close();
  });
});

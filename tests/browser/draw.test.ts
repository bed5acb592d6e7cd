/**
 * Surroundings drawn in the picture, in a real browser: each shape by two strokes of the mouse, in numbers that are what was
 * said beside the pointer; by clicks alone; by one finger, a second one taking the stroke back; given up with Escape. One step
 * of undo each, and nothing left of what was given up.
 */
import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, runAction, type Watched } from './page';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

type Px = readonly [x: number, y: number];

/** The page with the first example, seen from the front without perspective: a pixel is as long everywhere. */
async function openFront(options?: Parameters<Bench['newPage']>[0]): Promise<Watched> {
  const watched = await bench.newPage(options);
  const { page } = watched;
  await page.goto(`${bench.url}?plain`);
  await page.locator('.viewport canvas').waitFor();
  await page.locator('.viewport-label[data-kind="runner"]').first().waitFor({ state: 'attached' });
  await runAction(page, 'front view');
  await runAction(page, 'parallel and perspective');
  return watched;
}

const tag = (page: Page) => page.locator('.draw-tag');
const card = (page: Page) => page.locator('.draw-card');
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).first();
const editor = (page: Page) => page.getByRole('region', { name: 'Edit', exact: true });
const field = async (page: Page, label: string) =>
  Number((await editor(page).getByLabel(label, { exact: true }).inputValue()).replace('−', '-'));
const place = async (page: Page, label: string) => [
  await field(page, `${label} X`),
  await field(page, `${label} Y`),
  await field(page, `${label} Z`),
];

async function begin(page: Page, shape: string): Promise<(x: number, y: number) => Px> {
  await runAction(page, `draw a ${shape}`);
  await page.getByRole('region', { name: `Draw a ${shape}` }).waitFor();
  const box = (await page.locator('.viewport-surface').boundingBox())!;
  // From the lower left corner of the picture, where nothing is.
  return (x, y) => [box.x + 60 + x, box.y + box.height - 170 - y];
}

/** The place said beside the pointer while it rests there: on the plane through the ports, which is square to X here. */
async function placeSaid(page: Page, at: Px): Promise<number[]> {
  await page.mouse.move(...at);
  await page.mouse.move(at[0], at[1] + 1);
  await page.mouse.move(...at);
  await expect.poll(() => tag(page).textContent()).toMatch(/on the plane through the ports, square to X/);
  // The frame after the last move.
  await page.waitForTimeout(300);
  return numbers((await tag(page).locator('b').textContent())!);
}
const numbers = (text: string) => [...text.replaceAll('−', '-').matchAll(/-?\d+(\.\d+)?/g)].map(([n]) => Number(n));

async function stroke(page: Page, from: Px, to: Px): Promise<void> {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  await page.mouse.move(...to);
  await page.mouse.up();
}

describe('by mouse', () => {
  let page: Page;
  let watched: Watched;
  beforeAll(async () => {
    watched = await openFront();
    page = watched.page;
    await page.getByRole('tab', { name: 'Edit' }).click();
  });

  /** What was drawn is picked, and one undo takes all of it back. */
  async function undone(): Promise<void> {
    await expect.poll(() => undo(page).isEnabled(), { timeout: 30_000 }).toBe(true);
    await undo(page).click();
    await page.getByRole('region', { name: 'In this design' }).waitFor();
    expect(await undo(page).isDisabled()).toBe(true);
  }

  it('a box has the corners and the height that were said, all round, and is one step', async () => {
    const at = await begin(page, 'box');
    const [a, b] = [await placeSaid(page, at(0, 0)), await placeSaid(page, at(90, 60))];
    // 90 px across and 60 up: in proportion, to a step either way at each end.
    const [across, up] = [Math.abs(b[1]! - a[1]!), b[2]! - a[2]!];
    expect(Math.abs(across / 90 - up / 60)).toBeLessThan(10 / 60 + 10 / 90);
    for (const x of [...a, ...b]) expect(Math.abs(x % 5)).toBe(0);
    await stroke(page, at(0, 0), at(90, 60));
    await page.getByText('Now its height').waitFor();
    expect(numbers((await tag(page).locator('b').textContent())!)).toEqual([0, across, up]);
    // The view looks along it: up is toward the eye.
    await stroke(page, at(90, 60), at(90, 110));
    await editor(page).getByLabel('Name', { exact: true }).waitFor();
    const [from, to] = [await place(page, 'From'), await place(page, 'To')];
    expect(from.slice(1)).toEqual([Math.min(a[1]!, b[1]!), Math.min(a[2]!, b[2]!)]);
    expect(to.slice(1)).toEqual([Math.max(a[1]!, b[1]!), Math.max(a[2]!, b[2]!)]);
    const height = to[0]! - from[0]!;
    expect(Math.abs(height / 50 - up / 60)).toBeLessThan(10 / 50 + 10 / 60);
    expect(height % 5).toBe(0);
    expect([from[0], to[0]]).toContain(a[0]);
    expect(await card(page).count()).toBe(0);
    await undone();
  });

  it('a cylinder has its middle, its radius and its length', async () => {
    const at = await begin(page, 'cylinder');
    const [a, b] = [await placeSaid(page, at(60, 40)), await placeSaid(page, at(100, 40))];
    await stroke(page, at(60, 40), at(100, 40));
    await page.getByText('Now its length').waitFor();
    await page.mouse.move(...at(100, 90));
    await expect.poll(() => tag(page).textContent()).toMatch(/^radius \d+, length \d+ mm$/);
    await page.waitForTimeout(300);
    const [radius, length] = numbers((await tag(page).textContent())!);
    expect(Math.abs(radius! - Math.abs(b[1]! - a[1]!))).toBeLessThanOrEqual(10);
    await stroke(page, at(100, 90), at(100, 90));
    await editor(page).getByLabel('Name', { exact: true }).waitFor();
    expect(await place(page, 'From')).toEqual(a);
    const to = await place(page, 'To');
    expect(to.slice(1)).toEqual(a.slice(1));
    expect(Math.abs(to[0]! - a[0]!)).toBe(length);
    expect(await field(page, 'Radius')).toBe(radius);
    await undone();
  });

  it('a bar has its ends and its radius', async () => {
    const at = await begin(page, 'bar');
    const [a, b] = [await placeSaid(page, at(0, 0)), await placeSaid(page, at(80, 0))];
    await stroke(page, at(0, 0), at(80, 0));
    await page.getByText('Now its radius').waitFor();
    await stroke(page, at(40, 0), at(40, 30));
    await editor(page).getByLabel('Name', { exact: true }).waitFor();
    expect([await place(page, 'From'), await place(page, 'To')]).toEqual([a, b]);
    const perPx = Math.abs(b[1]! - a[1]!) / 80;
    expect(Math.abs((await field(page, 'Radius')) - 30 * perPx)).toBeLessThan(10);
    await undone();
  });

  it('a plane goes through where the stroke began and faces along it', async () => {
    const at = await begin(page, 'plane');
    const a = await placeSaid(page, at(40, 0));
    await stroke(page, at(40, 0), at(42, 70));
    await editor(page).getByLabel('Name', { exact: true }).waitFor();
    expect(await place(page, 'Through')).toEqual(a);
    expect(await place(page, 'Faces')).toEqual([0, 0, 1]);
    await undone();
  });

  it('clicks alone do it as well', async () => {
    const at = await begin(page, 'box');
    const [a, b] = [await placeSaid(page, at(0, 0)), await placeSaid(page, at(90, 60))];
    await page.mouse.click(...at(0, 0));
    await page.mouse.move(...at(45, 30));
    await page.getByText(/where it ends/).waitFor();
    await page.mouse.click(...at(90, 60));
    await page.getByText('Now its height').waitFor();
    await page.mouse.click(...at(90, 110));
    await editor(page).getByLabel('Name', { exact: true }).waitFor();
    expect((await place(page, 'From'))[2]).toBe(Math.min(a[2]!, b[2]!));
    expect((await place(page, 'To'))[2]).toBe(Math.max(a[2]!, b[2]!));
    await undone();
  });

  it('on a tube the base lies on it, and says so', async () => {
    const at = await begin(page, 'cylinder');
    const name = (await page.locator('.viewport-label[data-kind="runner"]').first().boundingBox())!;
    const beside: Px = [name.x + name.width / 2, name.y + name.height / 2];
    await page.mouse.move(...at(0, 0));
    await page.mouse.move(...beside);
    await expect.poll(() => tag(page).textContent()).toMatch(/on runner r\d/);
    await page.keyboard.press('Escape');
    await card(page).waitFor({ state: 'detached' });
  });

  it('Escape goes back a step at a time and leaves nothing', async () => {
    const at = await begin(page, 'box');
    await stroke(page, at(0, 0), at(90, 60));
    await page.getByText('Now its height').waitFor();
    await page.keyboard.press('Escape');
    await page.getByText('Drag from one corner').waitFor();
    await page.mouse.move(...at(0, 0));
    await page.mouse.down();
    await page.mouse.move(...at(50, 50));
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await page.getByText('Drag from one corner').waitFor();
    await page.keyboard.press('Escape');
    await card(page).waitFor({ state: 'detached' });
    expect(await undo(page).isDisabled()).toBe(true);
    expect(watched.errors).toEqual([]);
  });
});

describe('by touch', () => {
  it('one finger draws; a second one takes the stroke back and both turn the view', async () => {
    const watched = await openFront({ hasTouch: true });
    const { page } = watched;
    await page.getByRole('tab', { name: 'Edit' }).click();
    const at = await begin(page, 'box');
    const cdp: CDPSession = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: Px[]) =>
      cdp.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
    await touch('touchStart', at(0, 0));
    await touch('touchMove', at(40, 30));
    await touch('touchMove', at(90, 60));
    await expect.poll(() => tag(page).textContent()).toMatch(/^Y \d+ × Z \d+ mm/);
    const triad = () => page.locator('.viewport-triad').innerHTML();
    const before = await triad();
    await touch('touchStart', at(90, 60), at(200, 60));
    await touch('touchMove', at(130, 60), at(240, 60));
    await touch('touchMove', at(170, 60), at(280, 60));
    await touch('touchEnd');
    await page.getByText('Drag from one corner').waitFor();
    await expect.poll(triad).not.toBe(before);
    expect(await undo(page).isDisabled()).toBe(true);

    await runAction(page, 'front view');
    await touch('touchStart', at(0, 0));
    await touch('touchMove', at(40, 30));
    await touch('touchMove', at(90, 60));
    await touch('touchEnd');
    await page.getByText('Now its height').waitFor();
    await touch('touchStart', at(90, 70));
    await touch('touchMove', at(90, 100));
    await touch('touchMove', at(90, 120));
    await touch('touchEnd');
    await editor(page).getByLabel('Name', { exact: true }).waitFor();
    const [from, to] = [await place(page, 'From'), await place(page, 'To')];
    for (const k of [0, 1, 2]) expect(to[k]! - from[k]!).toBeGreaterThan(0);
    await undo(page).click();
    await page.getByRole('region', { name: 'In this design' }).waitFor();
    expect(await undo(page).isDisabled()).toBe(true);
    expect(watched.errors).toEqual([]);
  });
});

/**
 * Typing instead of dragging, in a real browser: a tube in inches as one step back and forth, nonsense kept and explained,
 * several runners edited at once, a bend row with the lengths held, a group length out of reach.
 */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, type Watched } from './page';

let bench: Bench;
let watched: Watched;
let page: Page;

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  await page.getByText('Every rule holds').waitFor();
});

afterAll(() => bench?.close());

const leaf = (name: string) => page.getByRole('tab', { name: new RegExp(`^${name}`) }).click();
const inspector = () => page.getByRole('region', { name: 'Edit', exact: true });
const field = (name: string): Locator => inspector().getByRole('textbox', { name, exact: true });
const undo = (label: string | RegExp) => page.getByRole('button', { name: label });

async function type(into: Locator, text: string): Promise<void> {
  await into.fill(text);
  await into.press('Enter');
}

/** From wherever the column is, to the whole design and from there to one thing of it. */
async function pick(name: string): Promise<void> {
  await leaf('Edit');
  const whole = inspector().getByRole('button', { name: 'whole design' });
  if (await whole.isVisible()) await whole.click();
  await page.getByRole('region', { name: 'In this design' }).getByRole('button', { name, exact: true }).click();
}

describe('the inspectors', { timeout: 240_000 }, () => {
  it('takes a stock tube in inches whatever the display, as one step that can be taken back', async () => {
    await pick('primary');
    const diameter = field('Outside diameter');
    expect(await diameter.inputValue()).toBe('42.4');
    await type(diameter, '1 5/8 in');
    const step = undo(/^Undo: Outside diameter of tube primary: 42\.4 mm → 41\.275 mm/);
    await step.waitFor();
    expect(await diameter.inputValue()).toBe('41.275');
    await step.click();
    await undo('Undo').waitFor();
    expect(await diameter.inputValue()).toBe('42.4');
  });

  it('keeps nonsense in its field with what is wrong, and gives the value back on Escape', async () => {
    await pick('primary');
    const wall = field('Wall');
    await type(wall, '30');
    expect(await wall.getAttribute('aria-invalid')).toBe('true');
    expect(await wall.inputValue()).toBe('30');
    await inspector().getByText('30 mm is out of range: above 0 mm, less than 21.2 mm.').waitFor();
    await wall.press('Escape');
    expect(await wall.inputValue()).toBe('1.5');
    expect(await wall.getAttribute('aria-invalid')).toBe('false');
    expect(await undo('Undo').isDisabled()).toBe(true);
  });

  it('renames a thing with all that names it, and refuses to remove what a runner needs', async () => {
    await pick('p1');
    await type(field('Name'), 'front port');
    await undo(/^Undo: Rename port p1/).waitFor();
    await pick('r1');
    expect(await inspector().getByRole('combobox', { name: 'From' }).locator('option:checked').textContent()).toBe(
      'Port front port',
    );
    await pick('front port');
    await inspector().getByRole('button', { name: 'Remove' }).click();
    const alert = page.getByRole('alert');
    await alert.getByText(/runner "r1".*remove that runner too/).waitFor();
    await alert.getByRole('button', { name: 'Dismiss' }).click();
    await undo(/^Undo: Rename/).click();
  });

  it('locks two runners picked together as one step, seen in their rows', async () => {
    await leaf('Numbers');
    const rows = page.getByRole('region', { name: 'Runners', exact: true });
    const name = (id: string) => rows.getByRole('rowheader', { name: id, exact: true });
    await name('r1').click();
    await name('r3').click({ modifiers: ['ControlOrMeta'] });
    await leaf('Edit');
    await inspector().getByRole('heading', { name: '2 runners' }).waitFor();
    await inspector().getByRole('button', { name: 'Lock', exact: true }).click();
    await undo('Undo: Lock 2 runners').waitFor();
    await leaf('Numbers');
    await rows.getByRole('button', { name: 'Unlock r3' }).waitFor();
    expect(await rows.getByRole('button', { name: 'Lock r2' }).isVisible()).toBe(true);
    await undo('Undo: Lock 2 runners').click();
    await rows.getByRole('button', { name: 'Lock r3' }).waitFor();
  });

  it('turns a bend by a number in its table, the lengths held', async () => {
    await leaf('Numbers');
    await page.getByRole('combobox', { name: 'Runner' }).selectOption('r1');
    const angle = page.getByRole('textbox', { name: 'Angle of bend 2', exact: true });
    const before = Number(await angle.inputValue());
    await type(angle, `${before} - 1 1/2`);
    await undo(/^Undo: Angle of bend 2/).waitFor();
    expect(Number(await angle.inputValue())).toBeCloseTo(before - 1.5, 2);
    await page.getByText('Every rule holds').waitFor();
    await undo(/^Undo: Angle of bend 2/).click();
    await undo('Undo').waitFor();
    expect(Number(await angle.inputValue())).toBe(before);
  });

  it('says what can be had where a group length is out of reach', async () => {
    await pick('primaries');
    await type(field('Length'), '500');
    await inspector()
      .getByText(/^Out of reach: the nearest that can be had is .*Stopped by /)
      .waitFor();
    await undo(/^Undo: Length of group primaries/).click();
    await undo('Undo').waitFor();
  });

  it('draws what lengths a group and a runner could have, and names who sets the limit', async () => {
    await leaf('Numbers');
    const groups = page.getByRole('region', { name: 'Groups', exact: true });
    await groups.getByText(/^In reach: .* or longer, set by r1$/).waitFor();
    await groups.getByRole('img', { name: /, 820\.00 mm is in reach$/ }).waitFor();
    await type(groups.getByRole('textbox', { name: 'Length of group primaries' }), '500');
    await undo(/^Undo: Length of group primaries/).waitFor();
    await groups.getByText(/^500 mm is out of reach for group primaries: runner r1 is /).waitFor();
    await groups.getByRole('img', { name: /, 500\.00 mm is out of reach$/ }).waitFor();
    await pick('r1');
    await inspector()
      .getByRole('img', { name: /, 500\.00 mm is out of reach$/ })
      .waitFor();
    await undo(/^Undo: Length of group primaries/).click();
    await undo('Undo').waitFor();
    await inspector()
      .getByRole('img', { name: /, 820\.00 mm is in reach$/ })
      .waitFor();
  });

  it("draws how a port's area goes over into its tube's, and says what cannot be made", async () => {
    await pick('p1');
    const plot = (name: RegExp) => inspector().getByRole('img', { name });
    await plot(/^Area: 1075 mm² at the opening, 1219 mm² in the tube, at once$/).waitFor();
    await type(field('Transition length'), '20');
    await undo(/^Undo: Transition length of port p1/).waitFor();
    await plot(/over 20\.0 mm$/).waitFor();
    await inspector()
      .getByText(/even within 0\.01 %/)
      .waitFor();
    await type(field('Transition length'), '95');
    await inspector()
      .getByText(/^Port p1: its transition is 95 mm long and runner r1 goes straight for 91\.92 mm only/)
      .waitFor();
    await type(field('Transition length'), '8');
    await inspector()
      .getByText(/widens from .* as a cone of .* half-angle/)
      .waitFor();
    await type(field('Transition length'), '');
    await plot(/at once$/).waitFor();
    expect(await field('Transition wall').isVisible()).toBe(false);
  });

  it('did all of this without an error on the console', () => {
    expect(watched.errors).toEqual([]);
  });
});

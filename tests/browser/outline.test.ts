/** A flange's outline in a real browser: from a scan drawn here, scaled by two points, and from a DXF in inches; each one step. */

import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { circleLoop } from '../../geometry';
import { dxf, polyline } from '../formats/dxf/drawn';
import * as d from '../geometry/trace/drawn';
import { type Bench, openBench, runAction, withoutPicture } from './page';

const LONG = 60_000;
/** Of the first example: ports along the crankshaft, across from the first one; five studs below and three above. mm. */
const PORTS = [0, -92, -184, -276];
const STUDS = [
  [46, -29.5],
  [-46, 29.5],
  [-138, -29.5],
  [-230, 29.5],
  [-322, -29.5],
  [-46, -29.5],
  [-138, 29.5],
  [-230, -29.5],
] as const;
const DOTS = [100, 1600, 50] as const;

/** A scan of its gasket at 150 dpi, and two dots ten inches apart. */
function scanOf(): Buffer {
  const gasket = d.without(
    d.roundedRectangle(-138, 0, 404, 86, 14),
    ...PORTS.map((x) => d.disc(x, 0, 18.5)),
    ...STUDS.map(([x, y]) => d.disc(x, y, 4.5)),
  );
  const pixel = 25.4 / 150;
  const dots = d.any(...[DOTS[0], DOTS[1]].map((x) => d.disc((x - 357) * pixel, 66 - DOTS[2] * pixel, 0.6)));
  const shape: d.Shape = (x, y) => gasket(x - 360, y - 60) || dots(x - 360 + (360 - 357 * pixel), y - 54);
  const { width, height, data } = d.drawn({ width: 445, height: 120, dpi: 150, shape, noise: 5, seed: 11 });
  const png = new PNG({ width, height });
  for (const [k, v] of data.entries()) png.data.set([v, v, v, 255], 4 * k);
  return PNG.sync.write(png);
}

let bench: Bench;
let page: Page;
let errors: string[];
let strays: string[];

beforeAll(async () => {
  bench = await openBench();
  ({ page, errors, strays } = await bench.newPage({}, withoutPicture));
  await page.getByRole('region', { name: 'Runners', exact: true }).waitFor();
}, LONG);
afterAll(() => bench?.close());

const sheet = () => page.getByRole('dialog', { name: 'Outline of head flange' });

async function open(): Promise<void> {
  await runAction(page, 'outline from');
  await sheet().getByRole('button', { name: 'Choose a file…' }).waitFor();
}

const choose = (name: string, mimeType: string, buffer: Buffer) =>
  sheet().getByLabel('Drawing or scan').setInputFiles({ name, mimeType, buffer });

/** With the arrow keys, until its label says so. */
async function nudge(name: string, x: number, y: number): Promise<void> {
  const glass = sheet().getByRole('button', { name: new RegExp(`^${name}`) });
  await glass.focus();
  const now = /: (-?\d+), (-?\d+) px/.exec((await glass.getAttribute('aria-label'))!)!;
  const steps = [
    [x - Number(now[1]), 'ArrowRight', 'ArrowLeft'],
    [y - Number(now[2]), 'ArrowDown', 'ArrowUp'],
  ] as const;
  for (const [by, more, less] of steps)
    for (let k = 0; k < Math.abs(by); k++) await page.keyboard.press(by > 0 ? more : less);
}

describe('outline from a drawing or scan', () => {
  it('from a scan: two taps and a distance, then one step with its holes', async () => {
    await open();
    await choose('notes.txt', 'text/plain', Buffer.from('hello'));
    await sheet()
      .getByText(/neither a DXF drawing nor a picture/)
      .waitFor();
    await choose('gasket.png', 'image/png', scanOf());
    await sheet()
      .getByText(/tap the first/)
      .waitFor();
    const box = (await sheet().locator('.traced-frame svg').boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.1, box.y + box.height * 0.1);
    await page.mouse.click(box.x + box.width * 0.6, box.y + box.height * 0.1);
    await nudge('First point', DOTS[0], DOTS[2]);
    await nudge('Second point', DOTS[1], DOTS[2]);
    const distance = sheet().getByLabel('Between points', { exact: true });
    await distance.fill('10 in');
    await distance.press('Enter');
    await sheet().getByText('150 dots an inch by these points.').waitFor();
    expect(await sheet().locator('.traced-edge').getAttribute('d')).toMatch(/^M/);
    await sheet().getByText('Take 8 holes as fasteners').waitFor();
    await sheet().getByText('Take 4 openings for the ports').waitFor();
    await sheet().getByRole('button', { name: 'Take it' }).click();
    await sheet().waitFor({ state: 'hidden' });
    await page.getByText('Flange head flange has the outline of gasket.png').waitFor();

    // One step, taken back whole.
    await page.keyboard.press('Control+Z');
    await page.getByRole('button', { name: 'Undo', exact: true }).and(page.locator(':disabled')).waitFor();
    await page.keyboard.press('Control+Shift+Z');
    expect(errors).toEqual([]);
    expect(strays).toEqual([]);
  });

  it('from a DXF in inches: its unit is asked for, a wrong one is said in place', async () => {
    await open();
    const inches = [
      [64, -43],
      [64, 43],
      [-340, 43],
      [-340, -43],
    ].map(([x, y]) => [x! / 25.4, y! / 25.4, 0] as const);
    const loops = [inches, ...PORTS.map((x) => circleLoop([x / 25.4, 0], 18.5 / 25.4))];
    await choose(
      'flange.dxf',
      'image/vnd.dxf',
      Buffer.from(
        dxf(
          loops.map((loop) => polyline(loop)),
          1,
        ),
      ),
    );
    await sheet()
      .getByText(/says that it is in inches: choose/)
      .waitFor();
    const unit = sheet().getByLabel('Drawn in');
    await unit.selectOption('mm');
    await sheet()
      .getByText(/check its unit or scale/)
      .waitFor();
    expect(await sheet().getByRole('button', { name: 'Take it' }).isDisabled()).toBe(true);
    await unit.selectOption('in');
    await sheet()
      .getByText(/^4 straights and arcs/)
      .waitFor();
    await page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'hidden' });
    expect(errors).toEqual([]);
  });
});

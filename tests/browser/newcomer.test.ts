/**
 * The whole way of someone who has no file: an engine of their own typed in, its header made, a steering shaft put in its
 * way by typed numbers, a bend pulled by hand, and the shop folder taken away. What is written is measured by the kernel.
 */
import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addScaled, anySquareTo, check, cross, distance, lerp, resolveHeader, rotate, sub, unit } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { type Bench, openBench } from './page';

const LONG = 60_000;
const SHAFT = { radius: 11, clearance: 12, reach: 260 };
/** How far inside its clearance the shaft is put, mm: the runner must give way. */
const INTRUDES = 3;

let bench: Bench;
let page: Page;
let errors: string[];

beforeAll(async () => {
  bench = await openBench();
  ({ page, errors } = await bench.newPage());
  // Without the picker a file is a download, which a test can hold in its hands.
  await page.evaluate(() => Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }));
  await page.locator('.viewport canvas').waitFor();
}, LONG);
afterAll(() => bench?.close());

const type = async (label: string, text: string) => {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
};

/** The design as it is saved. */
async function saved(): Promise<Design> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  return parseDesign(readFileSync(await download.path(), 'utf8'));
}

const everyRuleHolds = () =>
  page
    .getByRole('region', { name: 'Problems', exact: true })
    .getByRole('heading', { name: 'Every rule holds' })
    .waitFor({ timeout: LONG });

/** Beside the middle of a runner's longest inner straight, on the side that is farthest from the other runners. */
function besideRunner(design: Design): { runner: string; a: Vec3; b: Vec3 } {
  const { runners } = resolveHeader(design);
  const laid = runners.flatMap((r) => (r.centerline ? [{ id: r.runner.id, points: r.centerline.points, r }] : []));
  const legs = laid.flatMap(({ id, points, r }) =>
    points.slice(1, -2).map((p, i) => ({ id, from: p, to: points[i + 2]!, r })),
  );
  const leg = legs.sort((x, y) => distance(y.from, y.to) - distance(x.from, x.to))[0]!;
  const middle = lerp(leg.from, leg.to, 0.5);
  const along = unit(sub(leg.to, leg.from));
  const away = leg.r.tubeRadius + SHAFT.radius + SHAFT.clearance - INTRUDES;
  const sides = Array.from({ length: 16 }, (_, k) => {
    const out = rotate(anySquareTo(along), along, (k * Math.PI) / 8);
    const centre = addScaled(middle, out, away);
    const way = cross(along, out);
    const [a, b] = [addScaled(centre, way, -SHAFT.reach), addScaled(centre, way, SHAFT.reach)];
    const places = Array.from({ length: 27 }, (_, n) => lerp(a, b, n / 26));
    const free = laid
      .filter(({ id }) => id !== leg.id)
      .flatMap(({ points }) =>
        points.slice(1).flatMap((p, i) => [0, 0.25, 0.5, 0.75].map((t) => lerp(points[i]!, p, t))),
      )
      .reduce((least, p) => Math.min(least, ...places.map((q) => distance(p, q))), Number.POSITIVE_INFINITY);
    return { a, b, free };
  });
  const { a, b } = sides.sort((x, y) => y.free - x.free)[0]!;
  return { runner: leg.id, a, b };
}

describe('from nothing to the bender', () => {
  it(
    'makes a header of a typed engine, fits it round a shaft, pulls a bend and takes the shop folder away',
    async () => {
      await page.getByRole('button', { name: 'New…' }).click();
      await type('Title', 'Shed special');
      await type('Bore', '3 3/8 in');
      await type('Stroke', '2*41+2');
      await page.getByRole('button', { name: 'Make the header' }).click();
      await page.getByRole('heading', { level: 1, name: 'Shed special' }).waitFor({ timeout: LONG });
      await everyRuleHolds();
      const made = await saved();
      expect(check(made).problems).toEqual([]);
      expect(made.engine!.bore).toBeCloseTo(85.725, 9);
      expect(made.engine!.stroke).toBe(84);
      expect(made.runners.length).toBe(4);

      const { runner, a, b } = besideRunner(made);
      await page.getByRole('tab', { name: 'Edit' }).click();
      await page.getByRole('button', { name: 'Add a bar' }).click();
      await type('Name', 'steering shaft');
      await type('Clearance', String(SHAFT.clearance));
      await type('Radius', String(SHAFT.radius));
      for (const [label, place] of [
        ['From', a],
        ['To', b],
      ] as const)
        for (const [k, axis] of ['X', 'Y', 'Z'].entries()) await type(`${label} ${axis}`, place[k]!.toFixed(3));
      await page.getByRole('tab', { name: 'Numbers' }).click();
      await page
        .getByRole('region', { name: 'Problems', exact: true })
        .getByText(/too close to the steering shaft/)
        .first()
        .waitFor({ timeout: LONG });
      await page.getByRole('button', { name: 'Balance', exact: true }).click();
      await everyRuleHolds();
      const fitted = await saved();
      const shaft = fitted.surroundings!.find((s) => s.id === 'steering shaft')!;
      expect(shaft).toMatchObject({ shape: 'capsule', radius: SHAFT.radius, clearance: SHAFT.clearance });
      const report = check(fitted);
      expect(report.problems).toEqual([]);
      // The runner in the way is another one now: it went round.
      const was = made.runners.find((r) => r.id === runner)!;
      expect(fitted.runners.find((r) => r.id === runner)!.points).not.toEqual(was.points);

      await page.getByRole('region', { name: 'Runners', exact: true }).getByText(runner, { exact: true }).click();
      const handle = page.locator('[data-handle^="bend"]').nth(1);
      await handle.waitFor();
      const box = (await handle.boundingBox())!;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let k = 1; k <= 6; k++) await page.mouse.move(x + 5 * k, y + 3 * k);
      await page.locator('.hand-tag .size').waitFor();
      await page.mouse.up();
      await page.getByRole('button', { name: /^Undo: / }).waitFor();
      await expect
        .poll(async () => JSON.stringify((await saved()).runners), { timeout: LONG })
        .not.toBe(JSON.stringify(fitted.runners));
      const pulled = await saved();
      expect(check(pulled).problems).toEqual([]);
      for (const g of check(pulled).groups) expect(g.spread).toBeLessThan(0.001);

      const [download] = await Promise.all([
        page.waitForEvent('download', { timeout: LONG }),
        page.getByRole('button', { name: 'Shop folder' }).click(),
      ]);
      const files = unzipSync(new Uint8Array(readFileSync(await download.path())));
      const schedule = Object.entries(files).find(([name]) => name.endsWith('bend-schedule.csv'))!;
      for (const r of pulled.runners) expect(strFromU8(schedule[1])).toContain(`\n${r.id},`);
      expect(errors).toEqual([]);
    },
    4 * LONG,
  );
});

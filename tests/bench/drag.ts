/**
 * `npm run bench:drag`: what one step of a drag costs in script, on the built app in a real browser, with the eight-runner
 * example: the worker's solve and check, and all of the page's script for the new picture, rack and numbers. Processor
 * time of both threads: where the picture is drawn in software, a clock would mostly measure that. Bends, directions and
 * steps are seeded, and taken as they come: free, pressed against neighbours, or stopped.
 */
import type { Page } from 'playwright-core';
import { openBench } from '../browser/page';
import { random } from '../random';
import { addGate, letThrough } from './gate';
import { startMeter } from './meter';
import { spread } from './statistics';

const DRAGS = 12;
const WARM_UP = 1;
const STEPS = 10;
/** Of the pointer, px: a calm hand's between two frames. */
const STEP_PX = 4;

const bench = await openBench();
try {
  const { page } = await bench.newPage({}, addGate);
  await page.goto(`${bench.url}?plain`);
  await openEight(page);
  const meter = await startMeter(page);
  const next = random(1);
  const solves: number[] = [];
  const pictures: number[] = [];
  const wholes: number[] = [];
  const clocks: number[] = [];
  let stopped = 0;
  for (let drag = 0; drag < WARM_UP + DRAGS; drag++) {
    const start = await grab(page, 1 + next.whole(0, 30));
    const way = next.between(0, 2 * Math.PI);
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    for (let step = 1; step <= STEPS; step++) {
      const far = step * STEP_PX;
      await meter();
      await page.mouse.move(start.x + far * Math.cos(way), start.y + far * Math.sin(way));
      for (let more = true; more; ) {
        const answer = await letThrough(page);
        if (!answer) break;
        more = answer.more;
        const { page: picture, workers } = await meter();
        if (drag < WARM_UP) continue;
        const solve = workers ?? answer.clocked;
        solves.push(solve);
        pictures.push(picture);
        wholes.push(solve + picture);
        clocks.push(answer.clocked);
      }
      if (drag >= WARM_UP && (await isStopped(page))) stopped++;
    }
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await settled(page);
    process.stderr.write('.');
  }
  process.stderr.write('\n');
  const line = (name: string, times: number[]) => {
    const { least, median, high, greatest } = spread(times);
    const in_ = (t: number) => t.toFixed(1).padStart(6);
    console.log(
      `${name} least ${in_(least)}  median ${in_(median)}  95th percentile ${in_(high)}  greatest ${in_(greatest)} ms`,
    );
  };
  console.log(
    `drag step  ${wholes.length} answers to ${DRAGS * STEPS} steps of the pointer, ${STEP_PX} px each, in ${DRAGS} seeded drags; ${stopped} stopped by a rule`,
  );
  line('solve and check  ', solves);
  line('page: picture etc', pictures);
  line('together         ', wholes);
  line('worker by clock  ', clocks);
  const within = wholes.filter((t) => t < 16).length / wholes.length;
  console.log(`under 16 ms: ${(100 * within).toFixed(1)} % of steps`);
} finally {
  await bench.close();
}

async function openEight(page: Page): Promise<void> {
  await page.locator('.viewport canvas').waitFor();
  await page
    .getByRole('button', { name: /example/i })
    .first()
    .click();
  await page.getByText('V8, both banks', { exact: false }).first().click();
  await page.getByText('r8', { exact: true }).first().waitFor();
  await settled(page);
}

/** Until nothing is being measured. */
async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () => document.querySelector('[aria-label="Problems"]')?.getAttribute('aria-busy') === 'false',
  );
}

/** Picks a bend by keys, so many on, and answers where its handle is. */
async function grab(page: Page, presses: number): Promise<{ x: number; y: number }> {
  for (let tries = 0; tries < 12; tries++) {
    await page.keyboard.press('Escape');
    await page.locator('.viewport').focus();
    for (let k = 0; k < presses + tries; k++) await page.keyboard.press('b');
    const handle = page.locator('[data-handle^="bend"]').nth((presses + tries) % 4);
    if (!(await handle.count())) continue;
    const box = await handle.boundingBox();
    if (box && box.x > 100 && box.y > 120 && box.x < 800 && box.y < 420)
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
  throw new Error('No bend handle came up.');
}

async function isStopped(page: Page): Promise<boolean> {
  const said = page.locator('.hand-tag').getByText(/stopped/i);
  return (await said.count()) > 0;
}

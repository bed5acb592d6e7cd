/**
 * What stands around a header, in a real browser: every shape added and moved by hand, a scan in inches placed by three points,
 * files that are no use refused in place. Nothing is ever asked of the network, and the app goes on whatever was in the file.
 */
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, openBench, type Watched } from './page';

let bench: Bench;
let watched: Watched;
let page: Page;
const asked: string[] = [];

beforeAll(async () => {
  bench = await openBench();
  watched = await bench.newPage();
  page = watched.page;
  await page.goto(`${bench.url}?plain`);
  await page.locator('.viewport canvas').waitFor();
  await page.locator('.viewport-label[data-kind="runner"]').first().waitFor({ state: 'attached' });
  await page.getByRole('tab', { name: 'Edit' }).click();
  page.on('request', (request) => asked.push(request.url()));
});
afterAll(() => bench?.close());

const editor = () => page.getByRole('region', { name: 'Edit', exact: true });
const undo = () => page.getByRole('button', { name: /^Undo/ }).first();
const number = async (label: string) =>
  Number((await editor().getByLabel(label, { exact: true }).inputValue()).replace('−', '-'));
const outline = async () => {
  await page.keyboard.press('Escape');
  await page.getByRole('region', { name: 'In this design' }).waitFor();
};

async function dragBy(dx: number, dy: number): Promise<void> {
  const box = (await page.locator('[data-handle^="surrounding"]').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
  await page.locator('.hand-tag .size').waitFor();
  await page.mouse.up();
}

describe('shapes', () => {
  it.each([
    ['box', 'From X'],
    ['bar', 'From X'],
    ['cylinder', 'From X'],
    // It goes along its normal alone, which is Y here.
    ['plane', 'Through Y'],
  ])('a %s is added in front of the ports, moved by its handle, and gone by two undos', async (what, field) => {
    await outline();
    await page.getByRole('button', { name: `Add a ${what}` }).click();
    await editor().getByLabel('Name', { exact: true }).waitFor();
    const before = await number(field);
    await dragBy(60, 30);
    await expect.poll(() => number(field), { timeout: 30_000 }).not.toBe(before);
    await expect.poll(() => undo().isEnabled(), { timeout: 30_000 }).toBe(true);
    await undo().click();
    await expect.poll(() => number(field), { timeout: 30_000 }).toBe(before);
    await undo().click();
    await page.getByRole('region', { name: 'In this design' }).waitFor();
  });

  it('a kind proposes a clearance in the same step, and says that it is common practice', async () => {
    await outline();
    await page.getByRole('button', { name: 'Add a cylinder' }).click();
    await editor().getByLabel('What it is').selectOption('fuel-line');
    expect(await number('Clearance')).toBe(75);
    await undo().click();
    expect(await number('Clearance')).toBe(10);
    await undo().click();
  });
});

/** A bent sheet, in inches, as text; its corners are where a scan of a plate with ports would have them. */
const PLY = `ply
format ascii 1.0
element vertex 5
property float x
property float y
property float z
element face 4
property list uchar int vertex_indices
end_header
0 0 0
10 0 0
0 10 0
10 10 0
5 5 2
3 0 1 4
3 1 3 4
3 3 2 4
3 2 0 4
`;

/** A GLB whose one buffer lies at an address. */
function glbElsewhere(): Buffer {
  const json = {
    asset: { version: '2.0' },
    buffers: [{ byteLength: 36, uri: 'https://example.com/bay.bin' }],
    bufferViews: [{ buffer: 0, byteLength: 36 }],
    accessors: [{ bufferView: 0, componentType: 5126, count: 3, type: 'VEC3', min: [0, 0, 0], max: [1, 1, 0] }],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 } }] }],
    nodes: [{ mesh: 0 }],
    scenes: [{ nodes: [0] }],
    scene: 0,
  };
  const text = Buffer.from(JSON.stringify(json));
  const chunk = Buffer.concat([text, Buffer.alloc((4 - (text.length % 4)) % 4, 0x20)]);
  const head = Buffer.alloc(20);
  head.write('glTF', 0, 'latin1');
  head.writeUInt32LE(2, 4);
  head.writeUInt32LE(20 + chunk.length, 8);
  head.writeUInt32LE(chunk.length, 12);
  head.write('JSON', 16, 'latin1');
  return Buffer.concat([head, chunk]);
}

/** Two triangles' worth of head, half a triangle of body. */
function cutShort(): Buffer {
  const stl = Buffer.alloc(84 + 25);
  stl.writeUInt32LE(2, 80);
  return stl;
}

/** One triangle as binary STL. */
function oneTriangle(...corners: readonly number[]): Buffer {
  const stl = Buffer.alloc(84 + 50);
  stl.writeUInt32LE(1, 80);
  for (const [i, x] of corners.entries()) stl.writeFloatLE(x, 84 + 12 + 4 * i);
  return stl;
}

/** Square patches side by side as binary STL, so many triangles: enough that reading takes a while. */
function large(triangles: number): Buffer {
  const stl = Buffer.alloc(84 + 50 * triangles);
  stl.writeUInt32LE(triangles, 80);
  for (let i = 0; i < triangles; i++) {
    const [x, y] = [i % 1000, Math.floor(i / 1000)];
    const at = 84 + 50 * i + 12;
    for (const [k, v] of [x, y, 0, x + 1, y, 0, x, y + 1, 1].entries()) stl.writeFloatLE(v, at + 4 * k);
  }
  return stl;
}

/** As the desktop drops a file: on what lies on top in the middle of the page. */
const drop = (name: string, bytes: Buffer) =>
  page.evaluate(
    ([name, base64]) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(base64!), (c) => c.charCodeAt(0))], name!));
      const under = document.elementFromPoint(innerWidth / 2, innerHeight / 2)!;
      for (const type of ['dragover', 'drop'])
        under.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    [name, bytes.toString('base64')],
  );

const sheet = () => page.getByRole('dialog', { name: 'A scan or mesh as a surrounding' });
const give = (name: string, buffer: Buffer) =>
  sheet().getByLabel('Scan or mesh file').setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
const status = () => sheet().locator('.scanned-foot [role="status"]');

describe('an imported mesh', () => {
  it('that is no use is refused in place, the next file is read, and nothing was asked of the network', async () => {
    await outline();
    await page.getByRole('button', { name: 'Scan or mesh…' }).click();
    await sheet().waitFor();
    const loaded = asked.length;
    for (const [name, bytes, words] of [
      ['half.stl', cutShort(), /half\.stl: .*cut short/],
      ['bay.stl', Buffer.from(PLY), /bay\.stl: it is named as STL and is PLY/],
      ['bay.glb', glbElsewhere(), /bay\.glb: .*(outside|external|elsewhere|not fetched|another file)/i],
      ['notes.txt', Buffer.from('hello'), /notes\.txt is not a mesh/],
      ['empty.obj', Buffer.from(''), /empty\.obj: it is empty/],
      ['nan.stl', oneTriangle(0, 0, 0, Number.NaN, 0, 0, 0, 1, 0), /nan\.stl: .*(not a number|NaN|number)/i],
      ['far.stl', oneTriangle(0, 0, 0, 1e12, 0, 0, 0, 1, 0), /far\.stl: it reaches .* km from its origin/],
      // A thousandfold when it is unpacked; it is never unpacked.
      ['bay.stl.gz', gzipSync(Buffer.alloc(32 * 2 ** 20)), /bay\.stl\.gz is not a mesh/],
      ['bomb.stl', gzipSync(Buffer.alloc(32 * 2 ** 20)), /bomb\.stl: it is packed with gzip; unpack it first/],
      ['bay.zip', Buffer.from('PK\x03\x04'), /bay\.zip is not a mesh/],
    ] as const) {
      await give(name, bytes);
      await expect.poll(() => status().textContent(), { timeout: 30_000 }).toMatch(words);
      expect(await sheet().getByRole('button', { name: 'Add it' }).isDisabled(), name).toBe(true);
    }
    // The worker's own script is the app's.
    expect(asked.slice(loaded).filter((url) => !url.startsWith(bench.url) && !/^(blob|data):/.test(url))).toEqual([]);
    expect(asked.slice(loaded).filter((url) => /example\.com|\.bin/.test(url))).toEqual([]);
  });

  it('is read as it is dropped on the open sheet, in place of what was there; the reading is told and can be stopped', async () => {
    await drop('first.ply', Buffer.from(PLY));
    await sheet().getByText('first.ply').waitFor();
    await drop('notes.txt', Buffer.from('hello'));
    await expect.poll(() => status().textContent()).toMatch(/notes\.txt is not a mesh/);
    await give('large.stl', large(400_000));
    const bar = sheet().getByRole('progressbar');
    await bar.waitFor();
    await sheet().getByRole('button', { name: 'Cancel reading' }).click();
    await bar.waitFor({ state: 'detached' });
    await drop('second.ply', Buffer.from(PLY));
    await sheet().getByText('second.ply').waitFor();
    await sheet().getByText('4 triangles').waitFor();
    expect(await sheet().getByText('first.ply').count()).toBe(0);
    expect(await undo().isDisabled()).toBe(true);
  });

  it('in inches is placed by three points, as one step', async () => {
    await give('bay.ply', Buffer.from(PLY));
    const inches = sheet().getByRole('radio', { name: /Inches/ });
    await inches.waitFor();
    for (const unit of await sheet().locator('input[name="scanned-unit"]').all())
      expect(await unit.isChecked()).toBe(false);
    expect(await sheet().getByText('254.0 × 254.0 × 50.8').count()).toBe(1);
    await inches.check();
    await sheet().getByLabel('What it is').selectOption('structure');
    await sheet().getByRole('radio', { name: 'By three points' }).check();
    const canvas = (await sheet().locator('.scanned-picture canvas').boundingBox())!;
    await page.mouse.click(canvas.x + canvas.width / 2, canvas.y + canvas.height / 2);
    // A click sets the first; then all are typed, to be exact.
    await expect.poll(() => sheet().getByLabel('Point 1 X').inputValue()).not.toBe('');
    const type = async (label: string, value: number) => {
      const input = sheet().getByLabel(label, { exact: true });
      await input.fill(String(value));
      await input.press('Enter');
    };
    const corners = [
      [0, 0, 0],
      [254, 0, 0],
      [0, 254, 0],
    ] as const;
    const places = [
      [100, 600, 0],
      [100, 600, 254],
      [354, 600, 0],
    ] as const;
    for (const k of [0, 1, 2] as const) {
      await sheet().getByLabel('In the design').nth(k).selectOption('typed');
      for (const [axis, name] of ['X', 'Y', 'Z'].entries()) {
        await type(`Point ${k + 1} ${name}`, corners[k][axis]!);
        await type(`Place ${k + 1} ${name}`, places[k][axis]!);
      }
    }
    expect(await sheet().getByText('0.00 mm off').count()).toBe(3);
    // In the wrong unit the same points lie too near each other, and that is said with what it comes from.
    await sheet()
      .getByRole('radio', { name: /Millimetres/ })
      .check();
    await expect.poll(() => status().textContent()).toMatch(/25\.4 times too near each other: is the scan in inches\?/);
    await inches.check();
    expect(await sheet().getByText('0.00 mm off').count()).toBe(3);
    await sheet().getByRole('button', { name: 'Add it' }).click();
    await sheet().waitFor({ state: 'hidden' });
    expect(await editor().getByLabel('Unit').inputValue()).toBe('in');
    expect([await number('Position X'), await number('Position Y'), await number('Position Z')]).toEqual([100, 600, 0]);
    expect([await number('X axis X'), await number('X axis Y'), await number('X axis Z')]).toEqual([0, 0, 1]);
    await undo().click();
    await page.getByRole('region', { name: 'In this design' }).waitFor();
    expect(await undo().isDisabled()).toBe(true);
    expect(watched.errors).toEqual([]);
    expect(watched.strays).toEqual([]);
  });

  it('is cropped by pulling at a side in the picture; the fields keep step, and the picture with them', async () => {
    await page.getByRole('button', { name: 'Scan or mesh…' }).click();
    await sheet().waitFor();
    await give('bay.ply', Buffer.from(PLY));
    await sheet()
      .getByRole('radio', { name: /Inches/ })
      .check();
    expect(await sheet().locator('.crop-handle').count()).toBe(0);
    await sheet().getByLabel('Only what reaches into a box').check();
    const to = sheet().getByLabel('Crop to X', { exact: true });
    expect(Number(await to.inputValue())).toBe(254);
    const handle = sheet().locator('.crop-handle[data-face="X 1"]');
    const middle = async () => {
      const box = (await handle.boundingBox())!;
      return [box.x + box.width / 2, box.y + box.height / 2] as const;
    };
    const [x, y] = await middle();
    const other = (await sheet().locator('.crop-handle[data-face="X 0"]').boundingBox())!;
    // A third of the way to the opposite side.
    const [dx, dy] = [(other.x + other.width / 2 - x) / 3, (other.y + other.height / 2 - y) / 3];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + dx / 2, y + dy / 2);
    await page.mouse.move(x + dx, y + dy);
    await sheet()
      .getByText(/^X to \d+/)
      .waitFor();
    await page.mouse.up();
    const pulled = Number(await to.inputValue());
    expect(pulled).toBeGreaterThan(120);
    expect(pulled).toBeLessThan(220);
    expect(Math.abs(pulled % 1)).toBe(0);
    expect(Number(await sheet().getByLabel('Crop from X', { exact: true }).inputValue())).toBe(0);
    const at = await middle();
    expect(Math.hypot(at[0] - x - dx, at[1] - y - dy)).toBeLessThan(8);
    // And the other way: typed, the mark goes along.
    await to.fill('254');
    await to.press('Enter');
    await expect.poll(async () => Math.hypot((await middle())[0] - x, (await middle())[1] - y)).toBeLessThan(2);
    await sheet().getByRole('button', { name: 'Close' }).click();
    await sheet().waitFor({ state: 'hidden' });
  });

  it('that is dropped where no design names it opens the sheet with it', async () => {
    await page.getByLabel('Design file, with its meshes').setInputFiles({
      name: 'other.ply',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(PLY),
    });
    await sheet().getByText('4 triangles').waitFor();
    await page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'hidden' });
  });

  it('is kept with its design: both come back when the page is loaded again', async () => {
    await page.getByRole('tab', { name: 'Edit' }).click();
    await outline();
    await page.getByRole('button', { name: 'Scan or mesh…' }).click();
    await sheet().waitFor();
    await give('bay.ply', Buffer.from(PLY));
    await sheet()
      .getByRole('radio', { name: /Inches/ })
      .check();
    await sheet().getByRole('button', { name: 'Add it' }).click();
    await sheet().waitFor({ state: 'hidden' });
    // Kept some time after the edit, mesh first: what is asked is whether a design's record names it.
    const keeps = () =>
      page.evaluate(async () => {
        for (const { name } of await indexedDB.databases()) {
          const open = indexedDB.open(name!);
          await new Promise((done) => {
            open.onsuccess = done;
          });
          const all = open.result.transaction('kept').objectStore('kept').getAll();
          await new Promise((done) => {
            all.onsuccess = done;
          });
          open.result.close();
          if (all.result.some((v: unknown) => typeof v === 'string' && v.includes('bay.ply'))) return true;
        }
        return false;
      });
    await expect.poll(keeps, { timeout: 20_000 }).toBe(true);
    await page.reload();
    await page.getByText('edited', { exact: true }).waitFor();
    await page.getByRole('tab', { name: 'Room' }).click();
    // It lies across the ports: measured against, so it is there to be measured.
    await page
      .getByRole('region', { name: 'Gaps', exact: true })
      .getByRole('button', { name: /to scan 1/ })
      .first()
      .waitFor({ timeout: 60_000 });
    expect(watched.errors).toEqual([]);
  });

  it('shares its memory with the workers', async () => {
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
  });
});

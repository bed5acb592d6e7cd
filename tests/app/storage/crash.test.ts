/**
 * The page killed at every call of every write, in every way that a put can be cut: what is found afterwards is the old
 * state or the new one, whole, and the new one wherever keeping it was reported.
 */
import { describe, expect, it } from 'vitest';
import { memoryBackend } from '../../../src/app/storage/backend';
import { createKept } from '../../../src/app/storage/kept';
import type { KeptDesign } from '../../../src/app/storage/keptDesign';
import { random } from '../../random';
import { Crash, CUTS, type Cut, crashingBackend } from './crashing';

const CUT_NAMES = Object.keys(CUTS) as Cut[];

const design = (text: string, id = 'd1'): KeptDesign => ({
  id,
  fileName: 'four.evenrun.json',
  changed: 1,
  origin: 'made',
  inFile: false,
  meshes: {},
  text,
});

/** Runs what a page does until it dies or is done; how far it got by its own account. */
async function until<T>(work: () => Promise<T>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (error) {
    if (!(error instanceof Crash)) throw error;
    return false;
  }
}

/** A first life that keeps some texts; the calls that one more write takes. */
async function lived(texts: readonly string[]): Promise<Map<string, unknown>> {
  const values = new Map<string, unknown>();
  const kept = createKept(memoryBackend(values));
  for (const text of texts) await kept.write(design(text));
  return values;
}

describe.each(CUT_NAMES)('a page killed during a write, its put left %s', (cut) => {
  it.each([0, 1, 2, 3, 4])('after %i earlier writes leaves the old or the new, whole', async (earlier) => {
    const texts = Array.from({ length: earlier }, (_, i) => `text ${i} ${'x'.repeat(20 * i)}`);
    const outcomes = new Set<string>();
    for (let at = 1; ; at++) {
      const values = await lived(texts);
      const backend = crashingBackend(values, at, cut);
      const done = await until(() => createKept(backend).write(design('the new text, somewhat longer')));
      const found = await createKept(memoryBackend(values)).read('d1');
      if (done) expect(found?.text).toBe('the new text, somewhat longer');
      else expect([texts.at(-1), 'the new text, somewhat longer']).toContain(found?.text);
      outcomes.add(String(found?.text === texts.at(-1)));
      if (done) break;
      expect(at).toBeLessThan(50);
      // The next life goes on from there as if nothing had been.
      const next = createKept(memoryBackend(values));
      await next.write(design('after the crash'));
      expect((await next.read('d1'))?.text).toBe('after the crash');
    }
    // The old one was seen as well as the new, so the cuts fell on both sides.
    expect(outcomes.size).toBe(2);
  });

  it('during a removal leaves the newest, or nothing', async () => {
    for (let at = 1; ; at++) {
      const values = await lived(['one', 'two', 'three']);
      const done = await until(() => createKept(crashingBackend(values, at, cut)).remove('d1'));
      const found = await createKept(memoryBackend(values)).read('d1');
      if (done) expect(found).toBeNull();
      else expect([undefined, 'three']).toContain(found?.text);
      if (done) break;
      expect(at).toBeLessThan(50);
    }
  });
});

describe('lives that end one after another', () => {
  it.each([31, 32, 33])('never lose what was reported kept (seed %i)', async (seed) => {
    const r = random(seed);
    const values = new Map<string, unknown>();
    /** For each design: what was last reported, and what may lie there since. */
    const ledger = new Map<string, { kept: string | undefined; maybe: string[] }>();
    let crashes = 0;
    for (let life = 0; life < 120; life++) {
      const cut = CUT_NAMES[r.whole(0, CUT_NAMES.length - 1)]!;
      const kept = createKept(crashingBackend(values, r.whole(1, 40), cut));
      const alive = await until(async () => {
        for (let i = 0; i < 6; i++) {
          const id = `d${r.whole(1, 3)}`;
          const text = `${life}.${i} ${'y'.repeat(r.whole(0, 200))}`;
          const entry = ledger.get(id) ?? { kept: undefined, maybe: [] };
          ledger.set(id, { ...entry, maybe: [...entry.maybe, text] });
          await kept.write(design(text, id));
          ledger.set(id, { kept: text, maybe: [] });
        }
      });
      if (!alive) crashes++;
      const after = createKept(memoryBackend(values));
      for (const [id, { kept: last, maybe }] of ledger) {
        const found = (await after.read(id))?.text;
        expect([last, ...maybe]).toContain(found);
        ledger.set(id, { kept: found, maybe: [] });
      }
    }
    expect(crashes).toBeGreaterThan(30);
  });
});

describe('what lies in storage', () => {
  it('is passed over where a later version wrote it, and the copy before it tried', async () => {
    const values = await lived(['one', 'two']);
    const kept = createKept(memoryBackend(values));
    expect((await kept.read('d1', (d) => d.text !== 'two'))?.text).toBe('one');
    expect(await kept.read('d1', () => false)).toBeNull();
  });

  it('is told from whole when a single character is another (seed 37)', async () => {
    const r = random(37);
    for (let i = 0; i < 200; i++) {
      const values = await lived(['one', 'two']);
      const [key, value] = [...values][r.whole(0, 1)]! as [string, string];
      const at = r.whole(0, value.length - 1);
      const other = String.fromCharCode(value.charCodeAt(at) ^ (1 << r.whole(0, 6)));
      values.set(key, value.slice(0, at) + other + value.slice(at + 1));
      const found = await createKept(memoryBackend(values)).read('d1');
      expect(found?.text).toBe(key.endsWith('/a') ? 'two' : 'one');
    }
  });
});

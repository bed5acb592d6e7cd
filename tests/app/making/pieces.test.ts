/** Pieces know what the picture and the rack know them by; words about them say what they mean. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import { headerOf } from '../../../src/app/derived';
import { makeShown } from '../../../src/app/making/draw/shown';
import { refOfStretch, stretchesOf } from '../../../src/app/making/pieces';
import { costOfWay, moneyWords, roundingWords, timeWords } from '../../../src/app/making/words';
import { list } from '../../../src/shop/list';
import { sampleMaking } from '../../shop/bench/sampleMaking';

const header = headerOf(
  parseDesign(readFileSync(new URL('../../../public/examples/four-4-1.evenrun.json', import.meta.url), 'utf8')),
);
const making = sampleMaking(header);

describe('pieces', () => {
  it('follow each other without a gap from the start of their runner to its end', () => {
    for (const tube of making.welded) {
      const { length } = header.runners.find((r) => r.runner.id === tube.runner)!.centerline!;
      const stretches = stretchesOf(tube, length);
      expect(stretches[0]!.from).toBe(0);
      expect(stretches.at(-1)!.to).toBe(length);
      stretches.slice(1).forEach((s, i) => {
        expect(s.from).toBe(stretches[i]!.to);
        expect(s.to).toBeGreaterThan(s.from);
      });
    }
  });

  it('of one bend each are that bend in the picture', () => {
    const [tube] = making.welded;
    const { length } = header.runners[0]!.centerline!;
    expect(stretchesOf(tube!, length).map((s) => refOfStretch(header, s))).toEqual(
      tube!.pieces.map((_, bend) => ({ kind: 'runner', id: tube!.runner, bend })),
    );
  });

  it('without a bend are a straight of it', () => {
    const ref = refOfStretch(header, { runner: making.welded[0]!.runner, piece: 'x', from: 2, to: 12 });
    expect(ref).toEqual({ kind: 'runner', id: making.welded[0]!.runner, straight: 0 });
  });
});

describe('words', () => {
  it('of times, money and names', () => {
    expect([0, 44.6, 60, 185].map(timeWords)).toEqual(['0 min', '45 min', '1 h', '3 h 5 min']);
    expect(moneyWords(12.5, 'EUR')).toBe('12.50 EUR');
    expect(moneyWords(12.5, '')).toBe('12.50');
    expect(list(['a', 'b', 'c'])).toBe('a, b and c');
  });

  it('have no cost where a price is missing', () => {
    expect(costOfWay({ cost: { stock: 1, welds: 2, work: 3 } })).toBe(6);
    expect(costOfWay({ cost: { stock: 1, welds: null, work: 3 } })).toBeNull();
  });

  it('say what rounding costs', () => {
    const words = roundingWords(
      { tape: 0.5, dial: 0.5, position: 0.8, angle: 0.31, length: -0.2 },
      (mm) => `${mm.toFixed(1)} mm`,
    );
    expect(words).toContain('0.8 mm and 0.31° off');
    expect(words).toContain('0.2 mm shorter');
  });
});

describe('in the picture', () => {
  const none = () => false;

  it('every weld is a ring on its tube, named by the pieces that it joins', () => {
    const shown = makeShown(making, header, null, none);
    const welds = making.welded.flatMap(({ joints }) => joints);
    expect(shown.joints).toHaveLength(welds.length);
    expect(shown.joints[0]!.text).toBe(`${making.welded[0]!.pieces[0]!.id} | 2`);
    const points = shown.welds.length / 3;
    const each = points / welds.length;
    const { tubeRadius } = header.runners[0]!;
    for (let i = 0; i < points; i++) {
      const { position, direction } = welds[Math.floor(i / each)]!;
      const out = position.map((x, k) => shown.welds[3 * i + k]! - x);
      expect(Math.hypot(...out)).toBeCloseTo(tubeRadius + 0.6, 6);
      expect(out.reduce((sum, x, k) => sum + x * direction[k]!, 0)).toBeCloseTo(0, 6);
    }
    expect(shown.ends).toEqual([]);
  });

  it('a piece that is meant has two rings of its own, a joint one, a hidden runner none', () => {
    const { runner, pieces } = making.welded[1]!;
    const piece = { runner, piece: pieces[0]!.id };
    const one = makeShown(making, header, { ...piece, joint: true }, none).ends.length;
    expect(one).toBeGreaterThan(0);
    expect(makeShown(making, header, piece, none).ends).toHaveLength(2 * one);
    expect(makeShown(making, header, piece, (id) => id === runner).ends).toEqual([]);
    expect(makeShown(making, header, { runner, piece: 'gone' }, none).ends).toEqual([]);
  });

  it('a tube that is bent has rings where it is split', () => {
    const { runner } = making.bent[0]!;
    const bent = {
      ...making,
      groups: making.groups.map((g) => ({ ...g, chosen: 'bent' as const })),
      bent: [making.bent[0]!, { ...making.bent[0]!, id: `${runner}b`, from: 200 }],
    };
    expect(makeShown(bent, header, null, none).joints.map(({ text }) => text)).toEqual([`weld before ${runner}b`]);
  });
});

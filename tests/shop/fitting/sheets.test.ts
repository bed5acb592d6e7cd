/** What the builder reads on the sheets for fitting: from reports made by hand, word by word where it matters. */
import { describe, expect, test } from 'vitest';
import { resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { placedTexts } from '../../../src/formats/drawing/textCorners';
import { fastenerBlocks } from '../../../src/shop/fitting/fastenerBlocks';
import { type Fitting, fittingSheets } from '../../../src/shop/fitting/fittingSheets';
import { gapBlocks } from '../../../src/shop/fitting/gapBlocks';
import { legWords, removalBlocks } from '../../../src/shop/fitting/removalBlocks';
import { beforeCutting, stretchesOf } from '../../../src/shop/fitting/words';
import { wrapArea, wrapBlocks } from '../../../src/shop/fitting/wrapBlocks';
import type { Block } from '../../../src/shop/sheet/flow';
import { DESIGN, FITTING, GAPS, ROOM } from './made';

const { header } = FITTING;
const rowsOf = (blocks: readonly Block[]) => blocks.flatMap((b) => (b.kind === 'table' ? b.rows : []));
const wordsOf = (blocks: readonly Block[]) => blocks.flatMap((b) => (b.kind === 'words' ? [b.words] : []));
/** Everything on the sheets, lines of a paragraph put together again. */
const said = (fitting: Fitting, display: 'mm' | 'in' = 'mm') =>
  fittingSheets(fitting, 'a4', display)
    .flatMap((s) => s.items.flatMap((i) => placedTexts(i).map((t) => t.text.text)))
    .join(' ');

describe('gaps', () => {
  test('a header that moves: what is measured at rest, and the least beside it', () => {
    const [first, second] = rowsOf(gapBlocks(header, ROOM.gaps, 'mm', FITTING.still));
    expect(first).toEqual(['r1 – steering shaft', '7.25', '5.25', '12.00', 'straight 2, 209.3 mm from the flange', '']);
    expect(second!.slice(1, 4)).toEqual(['2.80', '0.80', '4.00']);
  });

  test('one that stands still has one figure', () => {
    const still = GAPS.map(({ pose: _, ...gap }) => gap);
    const blocks = gapBlocks(header, { gaps: still, profiles: [] }, 'in');
    expect(rowsOf(blocks)[0]!.slice(0, 3)).toEqual(['r1 – steering shaft', '0.207', '0.472']);
    expect(wordsOf(blocks).join(' ')).not.toContain('rocks');
  });

  test('a tube that starts at a collector is measured from there', () => {
    const [runner, ...others] = DESIGN.runners;
    const secondary = { ...DESIGN, runners: [{ ...runner!, from: { merge: 'left collector' } }, ...others] };
    const [row] = rowsOf(gapBlocks(resolveHeader(secondary), ROOM.gaps, 'mm'));
    expect(row![3]).toMatch(/from left collector$/);
  });

  test('more than one measures are left to the table, and counted', () => {
    const many = Array.from({ length: 20 }, (_, i) => ({ ...GAPS[0]!, between: ['r1', `hose ${i}`] as const }));
    const blocks = gapBlocks(header, { gaps: many, profiles: [] }, 'mm');
    expect(rowsOf(blocks)).toHaveLength(10);
    expect(wordsOf(blocks).at(-1)).toBe('10 wider ones are in clearances.csv.');
  });
});

describe('fasteners', () => {
  const rows = rowsOf(
    fastenerBlocks(DESIGN, { ...ROOM.access, entries: ROOM.access.entries.filter((e) => e.kind === 'fastener') }),
  );

  test('each once, numbered as on the drawing, never farther in than the one before', () => {
    const { fasteners = [] } = DESIGN.flanges![0]!;
    expect(rows.map((r) => Number(r[2])).sort()).toEqual(fasteners.map((_, i) => i + 1));
    const middle = [0, 1, 2].map((k) => {
      const along = fasteners.map((f) => f.position[k]!);
      return (Math.min(...along) + Math.max(...along)) / 2;
    });
    const away = rows.map((r) => Math.hypot(...fasteners[Number(r[2]) - 1]!.position.map((x, k) => x - middle[k]!)));
    away.slice(1).forEach((far, i) => {
      expect(far).toBeGreaterThan(away[i]! - 0.001);
    });
    expect(away.at(-1)! - away[0]!).toBeGreaterThan(50);
  });

  test('with tool and state', () => {
    const state = (hole: number) => rows.find((r) => r[2] === String(hole))!.slice(4);
    expect(state(1)).toEqual(['13 mm socket, 75 mm extension', 'reachable']);
    expect(state(3)[1]).toBe('before wrapping only');
    expect(state(5)).toEqual(['13 mm ring spanner', 'with one tool only']);
    expect(state(8)[1]).toBe('blocked by r7');
  });

  test('those hard to reach are started first, and each has its sentence', () => {
    const words = wordsOf(fastenerBlocks(DESIGN, ROOM.access));
    const [start] = words;
    expect(start).toContain('first hole 5, 3, which');
    expect(start).toContain('No tool reaches hole 8 as the header is drawn');
    for (const e of ROOM.access.entries.filter((x) => x.reach !== 'reachable')) expect(words).toContain(e.message);
  });
});

describe('wrap', () => {
  test('the roll it takes: turns round each layer’s middle, by hand', () => {
    // 519.5 mm of r1 and 360 mm of r3; two layers of 1.6 on the tube: the middles are at OD + 1.6 and OD + 4.8.
    const od = DESIGN.tubes[DESIGN.runners[0]!.tube]!.outsideDiameter;
    const round = Math.PI * (od + 1.6) + Math.PI * (od + 4.8);
    expect(wrapArea(header, ROOM.access, DESIGN.wrap!)).toBeCloseTo(round * (519.5 + 360), 6);
    const [, estimate] = wordsOf(wrapBlocks(header, ROOM.access, 'mm'));
    expect(estimate).toContain(`${((round * 879.5) / 100).toFixed(0)} cm² of wrap`);
    expect(estimate).toContain(`${((round * 879.5) / 50 / 1000).toFixed(1)} m of one 50 mm wide`);
  });

  test('in inches, the same roll', () => {
    const area = wrapArea(header, ROOM.access, DESIGN.wrap!) / 25.4 ** 2;
    const [, estimate] = wordsOf(wrapBlocks(header, ROOM.access, 'in'));
    expect(estimate).toContain(`${area.toFixed(0)} in² of wrap`);
    expect(estimate).toContain(`${(area / 24).toFixed(1)} ft of one 2.0 in wide`);
  });

  test('no wrap, no words', () => {
    const { wrap: _, ...bare } = DESIGN;
    expect(wrapBlocks(resolveHeader(bare), ROOM.access, 'mm')).toEqual([]);
    expect(wrapBlocks(header, { entries: [], wrap: [] }, 'mm')).toEqual([]);
  });
});

describe('stretches of a tube', () => {
  const plan = {
    runner: 'r1',
    wrapped: [[0, 400]],
    possible: [
      [90, 120],
      [300, 400],
    ],
    bare: [
      { from: 35, to: 60, why: 'sensor', of: 'egt 1' },
      { from: 0, to: 36, why: 'fastener', of: 'f1 stud 1' },
      { from: 60, to: 90, why: 'narrow', of: 'head' },
      { from: 120, to: 240, why: 'narrow', of: 'r3' },
      { from: 130, to: 150, why: 'narrow', of: 'r5' },
      { from: 200, to: 300, why: 'bundle', of: '' },
    ],
  } as const;

  test('reasons that overlap or touch share one, each reason and name told once', () => {
    expect(stretchesOf(plan)).toEqual([
      { from: 0, to: 90, bare: 'for f1 stud 1, egt 1; too narrow for the roll beside head' },
      { from: 90, to: 120, bare: null },
      { from: 120, to: 300, bare: 'too narrow for the roll beside r3, r5; tubes run together' },
      { from: 300, to: 400, bare: null },
    ]);
  });
});

describe('getting it off', () => {
  test.each([
    [[0, 40, 0], [0, 0, 0], '40 mm toward +Y'],
    [[0, 0, -150.4], [0, 0, 0], '150 mm down'],
    [[-30, 0.4, 60], [0, 0, 0], '30 mm toward −X and 60 mm up'],
    [[0, 0, -80], [0.2, 0, 0], '80 mm down, turning it 11° about X'],
    [[0, 0, 0], [0, 0, -0.5], 'Turn it −29° about Z where it is'],
    [[0, 10, 0], [0.3, 0.4, 0], '10 mm toward +Y, turning it 29° about the direction 0.60, 0.80, 0.00'],
  ] as const)('%j, %j: %s', (move, turn, words) => {
    expect(legWords({ move, turn }, 'mm')).toBe(words);
  });

  test('in inches to a tenth', () => {
    expect(legWords({ move: [0, 0, -150], turn: [0, 0, 0] }, 'in')).toBe('5.9 in down');
  });

  test('the first step along the ports is off the studs; joints come after', () => {
    const [piece] = ROOM.removal.pieces;
    const [x, y, z] = header.ports.get(DESIGN.flanges![0]!.ports[0]!)!.pose.direction;
    const off = { turn: [0, 0, 0] as const, move: [42 * x, 42 * y, 42 * z] as const };
    const path = [piece!.path[0]!, off, { ...off, move: [off.move[0], off.move[1], off.move[2] - 200] as const }];
    const blocks = removalBlocks(header, { ...ROOM.removal, pieces: [{ ...piece!, path }] }, 'mm');
    expect(rowsOf(blocks)).toEqual([
      ['1', 'Drawn off straight, 42 mm'],
      ['2', '200 mm down'],
    ]);
    expect(wordsOf(blocks).at(-1)).toBe(ROOM.removal.joints[0]!.message);
    const raised = removalBlocks(header, { ...ROOM.removal, pieces: [{ ...piece!, path, raised: true }] }, 'mm');
    expect(rowsOf(raised).map((row) => row[1])).toEqual([
      'Drawn off straight, 42 mm',
      '200 mm down, with the vehicle raised and on stands',
    ]);
    const stuck = removalBlocks(header, { ...ROOM.removal, pieces: [{ ...piece!, slides: false, path }] }, 'mm');
    expect(rowsOf(stuck)[0]![1]).not.toContain('studs');
  });
});

describe('the sheets', () => {
  test('hold every part, in the unit of the design', () => {
    const words = said(FITTING, 'in');
    for (const part of ['Gaps to check, in', 'Fasteners', 'Wrap, in', 'Getting it off', 'Sensors', 'Mind'])
      expect(words).toContain(part);
    // Tools have the names that are stamped on them; messages come in the unit that the design is shown in.
    const { entries } = ROOM.access;
    const given = [...entries.flatMap((e) => [e.message, e.best!.name]), ROOM.removal.pieces[0]!.message];
    expect(given.reduce((rest, part) => rest.replaceAll(part, ''), words)).not.toMatch(/\bmm\b/);
  });

  test('sensors: along, round and lean, with remarks', () => {
    const words = said(FITTING);
    // An eighth of the way round a tube.
    const od = DESIGN.tubes[DESIGN.runners[0]!.tube]!.outsideDiameter;
    expect(words).toContain('r1: 60.0 mm from the flange');
    expect(words.replaceAll(/ +/g, ' ')).toContain(`−45.0°, ${((Math.PI * od) / 8).toFixed(1)} mm round`);
    expect(words).toContain('spanner meets r3');
    expect(words).toContain('egt 1 stands 640.0 mm before the outlet of left collector.');
  });

  test('mind what the design has: wrap on mild steel rusts, no wrap has no fibres', () => {
    const mild: Design = {
      ...DESIGN,
      tubes: Object.fromEntries(Object.entries(DESIGN.tubes).map(([id, { material: _, ...t }]) => [id, t])),
    };
    const stainless: Design = {
      ...DESIGN,
      tubes: Object.fromEntries(
        Object.entries(DESIGN.tubes).map(([id, t]) => [id, { ...t, material: 'stainless-304' }]),
      ),
    };
    expect(said({ ...FITTING, header: resolveHeader(mild) })).toContain('Mild steel corrodes sooner under wrap');
    expect(said({ ...FITTING, header: resolveHeader(stainless) })).not.toContain('corrodes');
    const { wrap: _, ...bare } = DESIGN;
    expect(said({ ...FITTING, header: resolveHeader(bare) })).not.toContain('fibres');
    expect(said(FITTING)).toContain('Local codes and licensed practice come first');
  });

  test('nothing found, no sheet', () => {
    expect(fittingSheets({ header, room: {} }, 'a4', 'mm')).toEqual([]);
    expect(fittingSheets({ header, room: { gaps: { gaps: [], profiles: [] } } }, 'a4', 'mm')).toEqual([]);
  });
});

describe('what no rule holds, for the cover', () => {
  test('is what tools do not reach and what does not come off, in words', () => {
    const [entry] = ROOM.access!.entries;
    const [piece] = ROOM.removal!.pieces;
    const told = beforeCutting({
      ...ROOM,
      access: {
        ...ROOM.access!,
        entries: [
          { ...entry!, reach: 'blocked' },
          { ...entry!, reach: 'reachable' },
        ],
      },
      removal: {
        pieces: [{ ...piece!, stopped: { by: ['shaft'], after: 3, at: [0, 0, 0] }, message: 'It stays.' }],
        joints: [],
      },
    });
    expect(told).toEqual([
      'Fasteners and service points: 1 of 2 blocked. Which, and what helps: see Fitting.',
      'It stays.',
    ]);
  });
  test('is nothing where all is reached and comes off', () => {
    const [entry] = ROOM.access!.entries;
    const entries = [{ ...entry!, reach: 'one-tool' as const }];
    expect(
      beforeCutting({ ...ROOM, access: { ...ROOM.access!, entries }, removal: { pieces: [], joints: [] } }),
    ).toEqual([]);
  });
});

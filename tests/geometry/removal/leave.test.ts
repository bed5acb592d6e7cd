/** Out of the bay: ways that must be searched for, judged by an outside look at every millimetre of them. */
import { describe, expect, test } from 'vitest';
import { type RemovalPiece, removalReport, resolveHeader } from '../../../geometry';
import type { Design, Surrounding } from '../../../shared/design/types';
import { box, leastAlong, OFF_STUDS, rod, skin, twin } from './headers';

const report = (design: Design, budget?: number) =>
  removalReport(resolveHeader(design), new Map(), budget === undefined ? {} : { budget });

/** Six walls round a space, some with a window; `open` names those left out. */
function room(open: readonly string[] = []): Surrounding[] {
  return [
    box('left wall', [-330, -30, -90], [-320, 650, 110]),
    box('right wall', [320, -30, -90], [330, 650, 110]),
    box('fore wall', [-330, 640, -90], [330, 650, 110]),
    box('aft wall', [-330, -30, -90], [330, -14, 110]),
    box('floor', [-330, -30, -90], [330, 650, -80]),
    box('lid', [-330, -30, 100], [330, 650, 110]),
  ].filter((b) => !open.includes(b.id));
}

/** The lid with a window across the rod's own way. */
const slot: Surrounding[] = [
  box('lid', [-330, -30, 100], [330, 230, 110]),
  box('lid', [-330, 370, 100], [330, 650, 110]),
  box('lid', [-330, -30, 100], [-260, 650, 110]),
  box('lid', [260, -30, 100], [330, 650, 110]),
];

function judged(design: Design, piece: RemovalPiece): void {
  const { runners, merges, flanges, path } = piece;
  // On the studs a plate's inner face lies on its gasket: there the room is told of the rest.
  const sliding = leastAlong(skin(design, runners, merges, flanges, [0]), path.slice(0, 2), design.surroundings!);
  const leaving = leastAlong(skin(design, runners, merges, flanges), path.slice(1), design.surroundings!);
  const least = Math.min(sliding, leaving);
  expect(least).toBeGreaterThan(0);
  // What is told as the least room is what the judge finds, but for his points' spacing and the share that is told.
  expect(Math.abs(piece.room!.gap - least)).toBeLessThan(0.6 + 0.02 * least);
}

describe('a rod in a room', () => {
  test('without a lid it is lifted straight out', () => {
    const design = rod(room(['lid']));
    const [piece] = report(design).pieces;
    expect(piece).toMatchObject({ slides: true, leaves: true });
    expect(piece!.path).toHaveLength(3);
    expect(piece!.message).toContain('leaves straight up');
    judged(design, piece!);
  });
  test('with a window across its way it is turned first, and the way holds', () => {
    const design = rod([...room(['lid']), ...slot]);
    const [piece] = report(design).pieces;
    expect(piece!.leaves).toBe(true);
    expect(Math.max(...piece!.path.map((p) => Math.hypot(...p.turn)))).toBeGreaterThan(0.8);
    expect(piece!.path[1]!.move[1]).toBeCloseTo(OFF_STUDS, 9);
    expect(piece!.message).toContain('turned on the way');
    judged(design, piece!);
  });
  test('the same asks get the same answer', () => {
    const design = rod([...room(['lid']), ...slot]);
    expect(report(design)).toEqual(report(design));
  });
  test('walls all round: no way is found, and it says where it stops', () => {
    const { pieces, joints } = report(rod(room()), 500);
    expect(pieces[0]).toMatchObject({ slides: true, leaves: false });
    expect(pieces[0]!.message).toContain('no way out was found');
    expect(pieces[0]!.stopped!.by.length).toBeGreaterThan(0);
    expect(joints.every((j) => !j.helps)).toBe(true);
  });
});

describe('ground', () => {
  test('drawn as a box nothing goes below it, however far to the side', () => {
    const ground: Surrounding = { ...box('ground', [-100, -100, -400], [300, 500, -390]), kind: 'ground' };
    const [piece] = report(twin([ground])).pieces;
    expect(piece!.leaves).toBe(true);
    for (const { move } of piece!.path) expect(move[2]).toBeGreaterThan(-70);
  });
  test('planes shut off all that is behind them', () => {
    const planes: Surrounding[] = [
      { id: 'below', shape: 'plane', position: [0, 0, -340], normal: [0, 0, 1] },
      { id: 'lid', shape: 'plane', position: [0, 0, 60], normal: [0, 0, -1] },
      box('head', [-200, -200, -100], [300, -12, 50]),
    ];
    const [piece] = report(twin(planes)).pieces;
    expect(piece).toMatchObject({ slides: true, leaves: true });
    for (const { move } of piece!.path) expect(Math.abs(move[2])).toBeLessThan(40);
  });
});

describe('a hook', () => {
  /** A shelf with a hole round the two tubes above their collector: the tubes may be moved in it, neither end passes. */
  const shelf = (): Surrounding[] => [
    box('shelf', [-600, -600, -160], [600, 270, -150]),
    box('shelf', [-600, 352, -160], [600, 900, -150]),
    box('shelf', [-600, 270, -160], [-10, 352, -150]),
    box('shelf', [110, 270, -160], [600, 352, -150]),
  ];
  test('only with the collector as a slip joint does it come off', () => {
    const { pieces, joints } = report(twin(shelf()), 600);
    expect(pieces[0]).toMatchObject({ slides: true, leaves: false });
    expect(pieces[0]!.stopped!.by).toContain('shelf');
    expect(joints).toHaveLength(1);
    expect(joints[0]).toMatchObject({ where: 'merges/m1/inlets', joint: 'slip', helps: true });
    expect(joints[0]!.message).toContain(
      'collector m1 comes 41 mm off its joint and leaves straight down; then runners r1 and r2',
    );
  });
  test('with a bar below the collector not even that helps', () => {
    const { joints } = report(twin([...shelf(), box('bar', [-50, 250, -350], [150, 350, -340])]), 600);
    expect(joints.some((j) => j.helps)).toBe(false);
    expect(joints[0]!.message).toContain('collector m1 slides');
  });
});

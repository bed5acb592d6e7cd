/** The proof: tubes rebuilt from their pieces and clocking, within a hundredth of a millimetre and of a degree. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../../shared/design/types';
import { settingsOf } from '../../../../shared/stock/workshop';
import { joints } from '../../../../src/shop/joints';
import type { WeldedTube } from '../../../../src/shop/making/report';
import { rebuildMarched, rebuildPieces } from '../../../../src/shop/making/welded/rebuild';
import { weldedStraights } from '../../../../src/shop/making/welded/sawn';
import { startOf } from '../../../../src/shop/making/welded/weldedTube';
import type { Part } from '../../../../src/shop/part';
import { pieces } from '../../../../src/shop/pieces';
import { seeds } from '../../../geometry/curve/lines';
import { ONE_BEND, oneRunner } from '../../designs';
import { bend, examples, known, type Made, madeOf, randomWelded } from './designs';
import { marchTables, strays } from './march';

const MM = 0.01;
const DEGREE = 0.01;

/** Also that the two ways of marching agree, far below the promise. */
function expectRebuilt({ parts, tubes }: Made): void {
  const tables = [pieces(tubes), joints(tubes)] as const;
  for (const [i, part] of parts.entries()) {
    const { id, line } = part;
    const { mm, degrees, longer } = strays(marchTables(startOf(part), id, ...tables), line);
    expect(mm, id).toBeLessThan(MM);
    expect(degrees, id).toBeLessThan(DEGREE);
    expect(Math.abs(longer), id).toBeLessThan(MM);
    const again = rebuildPieces(startOf(part), tubes[i]!);
    expect(Math.abs(again.length - line.length), id).toBeLessThan(MM);
    const steps = marchTables(startOf(part), id, ...tables);
    expect(strays(steps, again).mm, id).toBeLessThan(2e-5);
  }
}

/** As sawn, then welded with gaps and shrinkage and trimmed. */
function sawnLine(part: Part, tube: WeldedTube, design: Design) {
  const { tooling } = part.resolved;
  const trims = { start: tooling.trimStart ?? 0, end: tooling.trimEnd ?? 0 };
  const sawn = tube.pieces.map((piece) => ({ ...piece, in: piece.sawnIn, out: piece.sawnOut }));
  return rebuildMarched(
    startOf(part),
    weldedStraights(sawn, settingsOf(design.workshop), trims),
    tube.start.turn,
    tube.joints.map(({ turn }) => turn),
    tube.startTrim,
  );
}

const WELDS = { weldGap: 0.4, weldShrinkage: 1.3 };

describe.each([...examples, ...known()])('%s', (_, design) => {
  test('from its pieces and clocking', () => expectRebuilt(madeOf(design)));

  test('from what is sawn, with gaps and shrinkage', () => {
    const asked = { ...design, workshop: { ...design.workshop, ...WELDS } };
    const { parts, tubes } = madeOf(asked);
    for (const [i, part] of parts.entries()) {
      const tube = tubes[i]!;
      const { points } = sawnLine(part, tube, asked);
      const short = tube.joints.filter(({ before, behind }) => before === 0 && behind === 0).length * 0.9;
      const apart = Math.hypot(...points.at(-1)!.map((x, k) => x - part.line.points.at(-1)![k]!));
      // Where no straight takes an allowance the tube is off by no more than that, and says so.
      if (short === 0) expect(apart, part.id).toBeLessThan(MM);
      else expect(apart, part.id).toBeLessThanOrEqual(short + MM);
      expect(
        tube.remarks.some(({ message }) => message.includes('draws in')),
        part.id,
      ).toBe(short > 0);
    }
  });
});

test.each(seeds(120))('random tube and shelf, seed %i', (seed) => {
  const design = randomWelded(seed);
  const made = madeOf(design);
  expect(made.parts).toHaveLength(1);
  expectRebuilt(made);
  const [tube] = made.tubes;
  if (tube!.remarks.length === 0) {
    const { points } = sawnLine(made.parts[0]!, tube!, design);
    for (const k of [0, 1, 2]) expect(points.at(-1)![k]).toBeCloseTo(made.parts[0]!.line.points.at(-1)![k]!, 6);
  }
});

test('behind a transition and in a flange’s step', () => {
  const plain = oneRunner(ONE_BEND, { tooling: { trimStart: 5, trimEnd: 3 } });
  const led = { ...plain, ports: [{ ...plain.ports[0]!, transition: { length: 20 } }] };
  const stepped: Design = {
    ...plain,
    flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 }],
  };
  for (const [design, first] of [
    [led, 820],
    [stepped, 844],
  ] as const) {
    const made = madeOf(design);
    expectRebuilt(made);
    const [tube] = made.tubes;
    const arc = tube!.pieces.findIndex(({ kind }) => kind === 'bend');
    const straight = tube!.pieces.slice(0, arc + 1).reduce((sum, piece) => sum + piece.in, 0);
    expect(straight).toBeCloseTo(first, 7);
    expect(tube!.pieces[0]!.sawnIn - tube!.pieces[0]!.in).toBeCloseTo(5, 7);
    expect(tube!.pieces.at(-1)!.sawnIn - tube!.pieces.at(-1)!.in).toBeCloseTo(3, 7);
  }
});

test('a mirrored tube has its turns the other way round, and all else the same', () => {
  for (const seed of seeds(20)) {
    const design = randomWelded(seed);
    const flip = ([x, y, z]: readonly [number, number, number]) => [-x, y, z] as const;
    const [port] = design.ports;
    const mirrored: Design = {
      ...design,
      ports: [{ ...port!, position: flip(port!.position), direction: flip(port!.direction), up: flip(port!.up) }],
      runners: [{ ...design.runners[0]!, points: design.runners[0]!.points!.map(flip) }],
    };
    const [a, b] = [madeOf(design).tubes[0]!, madeOf(mirrored).tubes[0]!];
    const opposite = (turn: number) => (Math.abs(Math.abs(turn) - 180) < 1e-6 ? turn : 0 - turn);
    expect(b.pieces.map((piece) => piece.in + piece.angle + piece.out)).toEqual(
      a.pieces.map((piece) => expect.closeTo(piece.in + piece.angle + piece.out, 6)),
    );
    expect(b.joints.map((j) => j.turn)).toEqual(a.joints.map((j) => expect.closeTo(opposite(j.turn), 6)));
    expect(b.start.turn).toBeCloseTo(opposite(a.start.turn), 6);
    expect(b.joints.map((j) => j.torchFree)).toEqual(a.joints.map((j) => j.torchFree));
  }
});

test('the proof can fail: a turn off by a twentieth of a degree, or a piece by a twentieth of a millimetre', () => {
  const { parts, tubes } = madeOf(examples[0]![1]);
  const at = tubes[0]!.joints.findIndex(({ turn }) => turn !== 0);
  const wrong = (piecesText: string, jointsText: string) =>
    strays(marchTables(startOf(parts[0]!), parts[0]!.id, piecesText, jointsText), parts[0]!.line).mm;
  const turned = tubes[0]!.joints.map((joint, k) => (k === at ? { ...joint, turn: joint.turn + 0.05 } : joint));
  expect(wrong(pieces(tubes), joints([{ ...tubes[0]!, joints: turned }]))).toBeGreaterThan(MM);
  const longer = tubes[0]!.pieces.map((piece, k) => (k === 1 ? { ...piece, in: piece.in + 0.05 } : piece));
  expect(wrong(pieces([{ ...tubes[0]!, pieces: longer }]), joints(tubes))).toBeGreaterThan(MM);
});

test('one that bends more than any stock bend, in one plane', () => {
  const design = oneRunner(
    {
      points: [
        [0, 0, 0],
        [0, 160, 0],
        [120, 160, 0],
        [120, -40, 0],
      ],
    }, // prettier-ignore
  );
  for (const angles of [[90], [45], [100, 30]]) {
    const made = madeOf(design, { bends: angles.map((angle) => bend(angle)) });
    expectRebuilt(made);
    const bent = made.tubes[0]!.pieces.filter(({ kind }) => kind === 'bend').map(({ angle }) => angle);
    expect(bent.reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(180, 7);
    expect(bent).toHaveLength(Math.ceil(180 / angles[0]!));
    expect(Math.max(...bent)).toBeLessThanOrEqual(angles[0]!);
    expect(made.tubes[0]!.joints.every(({ turn }) => turn === 0)).toBe(true);
  }
});

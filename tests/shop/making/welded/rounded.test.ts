/** What rounding to tape and dial costs, against marching along rounded tables by another way. */
import { describe, expect, test } from 'vitest';
import { angleBetween, DEGREES, distance } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { joints } from '../../../../src/shop/joints';
import { startOf } from '../../../../src/shop/making/welded/weldedTube';
import { pieces } from '../../../../src/shop/pieces';
import { toStep } from '../../../../src/shop/toStep';
import { oneRunner } from '../../designs';
import { bend, examples, madeOf } from './designs';
import { marchTables } from './march';

const STEPS = { tape: 1, dial: 0.5 };

/** Neither trims nor what welds take and give: sawn is then as welded. */
const plain = (design: Design): Design => ({
  ...design,
  tooling: Object.fromEntries(
    Object.entries(design.tooling).map(([name, { trimStart: _, trimEnd: __, ...tooling }]) => [name, tooling]),
  ),
});

describe.each(examples)('%s', (_, design) => {
  const { parts, tubes } = madeOf(plain(design), { ...design.workshop, weldGap: 0, weldShrinkage: 0, ...STEPS });

  test('as a builder would get it, by a way of its own', () => {
    const rounded = tubes.map((tube) => ({
      ...tube,
      start: { ...tube.start, turn: toStep(tube.start.turn, STEPS.dial) },
      pieces: tube.pieces.map((piece) => ({
        ...piece,
        in: toStep(piece.sawnIn, STEPS.tape),
        angle: toStep(piece.angle, STEPS.dial),
        out: toStep(piece.sawnOut, STEPS.tape),
      })),
      joints: tube.joints.map((joint) => ({ ...joint, turn: toStep(joint.turn, STEPS.dial) })),
    }));
    for (const [i, part] of parts.entries()) {
      const end = marchTables(startOf(part), part.id, pieces(rounded), joints(rounded)).at(-1)!;
      const { position, angle, length } = tubes[i]!.rounded;
      expect(position).toBeCloseTo(distance(end.position, part.line.points.at(-1)!), 4);
      expect(angle).toBeCloseTo(angleBetween(end.tangent, part.line.directions.at(-1)!) * DEGREES, 4);
      expect(length).toBeCloseTo(end.station - part.line.length, 4);
      expect(position).toBeGreaterThan(0.01);
    }
  });

  test('finer steps cost less, and none costs nothing', () => {
    const worst = (tape: number, dial: number) =>
      Math.max(...madeOf(design, { ...design.workshop, tape, dial }).tubes.map(({ rounded }) => rounded.position));
    expect(worst(0.001, 0.001)).toBeLessThan(worst(0.5, 0.5) / 20);
    expect(worst(0, 0)).toBeLessThan(1e-6);
  });
});

test('a bend a fifth of a degree off, by hand', () => {
  const t = (90.2 * Math.PI) / 180;
  const design = oneRunner({
    points: [
      [0, 0, 0],
      [0, 300, 0],
      [0, 300 + 400 * Math.cos(t), -400 * Math.sin(t)],
    ],
  }); // prettier-ignore
  const whole = madeOf(design, { bends: [bend(180)] }).tubes[0]!.rounded;
  expect(whole).toMatchObject({ tape: 0.5, dial: 0.5 });
  expect(whole.angle).toBeCloseTo(0.2, 6);
});

test('the whole of a stock bend is not sawn through its arc: nothing rounds it', () => {
  const t = (89.98 * Math.PI) / 180;
  const design = oneRunner({
    points: [
      [0, 0, 0],
      [0, 150, 0],
      [0, 150 + 150 * Math.cos(t), -150 * Math.sin(t)],
    ],
  }); // prettier-ignore
  const workshop = { dial: 0.7, tape: 0.001 };
  expect(madeOf(design, { ...workshop, bends: [bend(90)] }).tubes[0]!.rounded.angle).toBeCloseTo(0.02, 6);
  expect(madeOf(design, { ...workshop, bends: [bend(180)] }).tubes[0]!.rounded.angle).toBeCloseTo(90.3 - 89.98, 6);
});

test('what is sawn on for trims and welds is given back', () => {
  const [design] = examples.map(([, d]) => d);
  const tooling = { ...design!.tooling, primary: { ...design!.tooling.primary!, trimStart: 10, trimEnd: 15 } };
  const welds = { weldGap: 0.5, weldShrinkage: 1.5 };
  const [plain, trimmed] = [design!, { ...design!, tooling }].map(
    (d) => madeOf(d, { ...d.workshop, ...welds, tape: 0.0001, dial: 0.0001 }).tubes[0]!,
  );
  expect(trimmed!.rounded.position).toBeLessThan(0.01);
  expect(plain!.rounded.position).toBeLessThan(0.01);
});

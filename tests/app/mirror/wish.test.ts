/** Mirroring a bank from the sheet: what is filled in already can be mirrored at once, and each refusal stands at its field. */
import { beforeEach, describe, expect, test } from 'vitest';
import { check, draftHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { newForm } from '../../../shared/engine/formDefaults';
import { documents } from '../../../src/app/document';
import { history } from '../../../src/app/history';
import { mirrorActions, mirrorNow, openMirror, useMirror } from '../../../src/app/mirror/state';
import {
  apartOf,
  firstWish,
  type MirrorWish,
  outcomeOf,
  type Place,
  planeOf,
  surroundingsOf,
  usualCylinders,
  withApart,
  withBank,
} from '../../../src/app/mirror/wish';
import { useNotice } from '../../../src/app/notices';

const { design: four } = draftHeader(newForm({ cylinders: 4, arrangement: 'pairs-then-one' }));
const { design: eight } = draftHeader(newForm({ cylinders: 8, banks: 2 }));
const moved = (design: Design, y: number): Design => ({
  ...design,
  ports: design.ports.map((p) => ({ ...p, position: [p.position[0], p.position[1] + y, p.position[2]] as const })),
});

function problemAt(design: Design, wish: MirrorWish, place: Place): string | undefined {
  const outcome = outcomeOf(design, wish);
  if (outcome.ok) throw new Error('nothing is refused');
  return outcome.problems.get(place);
}

describe('what is filled in', () => {
  test('makes a second bank of a drawn four at once, every rule holding', () => {
    const outcome = outcomeOf(four, firstWish(four));
    if (!outcome.ok) throw new Error([...outcome.problems.values()].join());
    expect(check(outcome.design).problems).toEqual([]);
    expect(outcome.design.runners).toHaveLength(2 * four.runners.length);
    expect(parseDesign(writeDesign(outcome.design))).toEqual(outcome.design);
    expect(outcome.adds).toBe('4 ports, 6 runners, 3 collectors, 1 flange and 1 surrounding');
    expect(outcome.engine).toBe(
      'The engine then has 8 cylinders, in two banks; its firing order is left out: type the whole engine’s.',
    );
  });

  test('is the plane at the origin where that is behind the ports, else one behind them', () => {
    expect(planeOf(four, firstWish(four))).toEqual({ point: [0, -240, 0], normal: [0, 1, 0] });
    expect(planeOf(moved(four, 300), firstWish(four)).point).toEqual([0, 0, 0]);
    // Ports that look to the plane have no bank behind it.
    expect(planeOf(moved(four, -300), firstWish(four)).point).toEqual([0, -540, 0]);
  });

  test('goes by the engine’s two banks, or by the numbers that follow', () => {
    const half = outcomeHalf();
    expect(firstWish(half).bank).toBe(1);
    expect([...usualCylinders(half, firstWish(half)).values()]).toEqual(eight.engine!.banks![1]);
    expect([...usualCylinders(eight, firstWish(eight)).values()]).toEqual([9, 10, 11, 12]);
    expect([...usualCylinders(four, firstWish(four)).values()]).toEqual([5, 6, 7, 8]);
  });

  test('are the stand-ins for the head where the whole design is mirrored', () => {
    expect(surroundingsOf(four, firstWish(four))).toEqual(['head']);
    expect(surroundingsOf(eight, firstWish(eight))).toEqual([]);
  });
});

/** Bank 1 of the eight alone. */
function outcomeHalf(): Design {
  const [bank] = eight.engine!.banks!;
  const ports = eight.ports.filter((p) => bank!.includes(p.cylinder));
  const ids = new Set(ports.map((p) => p.id));
  const runners = eight.runners.filter((r) => 'port' in r.from && ids.has(r.from.port));
  const merges = eight.merges.filter((m) => runners.some((r) => r.to.merge === m.id));
  const flanges = eight.flanges!.filter((f) => f.ports.every((p) => ids.has(p)));
  return { ...eight, ports, runners, merges, flanges };
}

describe('bank to bank', () => {
  test.each([[[0, 1, 0]], [[0, -2, 0]], [[0.2, 1, -0.3]]] as const)(
    'square to %j it moves the plane, and says where it lies',
    (normal) => {
      const wish = { ...firstWish(four), normal };
      for (const apart of [300, 512.5]) {
        const next = withApart(four, wish, apart);
        expect(apartOf(four, next)).toBeCloseTo(apart, 9);
        expect(next.point![1]).toBeLessThan(0);
      }
    },
  );
  test('stays on the side that the plane was put on', () => {
    const beyond = { ...firstWish(four), point: [0, 700, 0] as const };
    expect(apartOf(four, beyond)).toBe(1400);
    expect(withApart(four, beyond, 1000).point).toEqual([0, 500, 0]);
  });
});

describe('a refusal stands at the field it is about', () => {
  const wish = firstWish(four);
  const opposite = (pairs: readonly (readonly [number, number])[]) => ({ ...wish, cylinders: new Map(pairs) });

  test('the plane through the bank', () => {
    expect(problemAt(four, { ...wish, point: [0, 0, 0] }, 'plane')).toMatch(/images of p1, p2, p3, p4 would lie/);
  });
  test('the plane too far away', () => {
    const far = withApart(four, wish, 99_000);
    expect(outcomeOf(four, far).ok).toBe(true);
    expect(problemAt(four, { ...far, point: [0, -60_000, 0] }, 'plane')).toMatch(/a plane nearer to the bank/);
  });
  test('a direction of no length', () => {
    const none = { ...wish, normal: [0, 0, 0] as const };
    expect(problemAt(four, none, 'normal')).toMatch(/one of the three must not be 0/);
    expect(apartOf(four, none)).toBeNull();
    expect(withApart(four, none, 300)).toBe(none);
  });
  test('a number left out, one with a port, one twice', () => {
    expect(problemAt(four, opposite([[4, 9]]), 'cylinder 4')).toMatch(/Not cylinder 9 .* from 1 to 8/);
    expect(problemAt(four, opposite([[2, 1]]), 'cylinder 2')).toMatch(/which has port "p1"/);
    expect(problemAt(four, opposite([[1, 6]]), 'cylinder 2')).toMatch(/6 opposite, as for cylinder 1/);
  });
  test('a bank that shares its collector, a bank without ports', () => {
    const { design: shared } = draftHeader(newForm({ cylinders: 4, banks: 2, collectors: [[1, 2, 3, 4]] }));
    expect(problemAt(shared, firstWish(shared), 'rest')).toMatch(/^merges\/.*of another bank/);
    expect(problemAt(outcomeHalf(), withBank(firstWish(eight), 2), 'bank')).toMatch(/no port of its cylinders/);
  });
  test('a box in a slanting plane', () => {
    const box = { id: 'wall', shape: 'box', min: [400, 0, 0], max: [420, 9, 9] } as const;
    const walled: Design = { ...four, surroundings: [...four.surroundings!, box] };
    const slanting = { ...wish, normal: [0.1, 1, 0] as const, surroundings: ['wall'] };
    expect(problemAt(walled, slanting, 'surrounding wall')).toMatch(/a box and a plane square to an axis/);
    expect(outcomeOf(walled, { ...slanting, normal: [0, 1, 0] }).ok).toBe(true);
  });
});

describe('done', () => {
  beforeEach(() => documents.open(four, 'four.evenrun.json'));
  const now = () => documents.store.getState().settled!;

  test('is one step of history that is taken back whole, and says what became of the engine', () => {
    openMirror();
    mirrorNow(firstWish(four));
    expect(useMirror.getState().open).toBe(false);
    expect(now().runners).toHaveLength(12);
    expect(history.store.getState().past.map((s) => s.label)).toEqual(['Mirror the bank']);
    expect(useNotice.getState().notice).toMatchObject({
      title: 'Mirrored: 4 ports, 6 runners, 3 collectors, 1 flange and 1 surrounding added',
      lines: ['The engine has 8 cylinders now, in two banks; its firing order is left out: type the whole engine’s.'],
    });
    history.undo();
    expect(now()).toBe(four);
  });

  test('not where it is refused: the sheet stays, the design too', () => {
    openMirror();
    mirrorNow({ ...firstWish(four), point: [0, 0, 0] });
    expect(useMirror.getState().open).toBe(true);
    expect(now()).toBe(four);
    expect(history.store.getState().past).toEqual([]);
  });

  test('not where another tab has the design', () => {
    documents.setReadOnly(true);
    useNotice.setState({ notice: null });
    mirrorNow(firstWish(four));
    expect(now()).toBe(four);
    expect(useNotice.getState().notice).toBeNull();
    documents.setReadOnly(false);
  });

  test('is an action that waits for a port', () => {
    const [action] = mirrorActions;
    expect(action!.ready!()).toBe(true);
    documents.open({ ...four, ports: [] }, 'none.evenrun.json');
    expect([action!.ready!(), action!.why!()]).toEqual([false, 'There is no port to mirror']);
  });
});

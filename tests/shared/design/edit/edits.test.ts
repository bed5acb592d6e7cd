/** Each edit by itself: what it changes, what follows it, and what it will not do. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  addFastener,
  addPort,
  addRunner,
  addSurrounding,
  duplicate,
  type Edited,
  middleOfSurrounding,
  readBanks,
  readCylinders,
  remove,
  rename,
  reshapeOpening,
  setCylinders,
  setFields,
  setFiringOrder,
  writeBanks,
} from '../../../../shared/design/edit';
import { parseDesign } from '../../../../shared/design/parse';
import type { Design } from '../../../../shared/design/types';

const design = parseDesign(
  readFileSync(new URL('../../../documents/v1/every-field.evenrun.json', import.meta.url), 'utf8'),
);

function done(edited: Edited): Design {
  if (!edited.ok) throw new Error(`${edited.refusal.path}: ${edited.refusal.found}; ${edited.refusal.allowed}`);
  return edited.design;
}
const why = (edited: Edited): string => (edited.ok ? 'done' : `${edited.refusal.path}: ${edited.refusal.allowed}`);

describe('setting fields', () => {
  it('changes one field and keeps the rest, also what is not known here', () => {
    const next = done(setFields(design, [[['ports', 0, 'lengthInHead'], 88]]));
    expect(next.ports[0]).toEqual({ ...design.ports[0], lengthInHead: 88 });
    expect(next.ports[1]).toBe(design.ports[1]);
    expect(next).toHaveProperty('note from a later program');
    expect(Object.keys(next)).toEqual(Object.keys(design));
  });

  it('takes an optional field away and makes what is missing on the way', () => {
    expect(done(setFields(design, [[['ports', 0, 'lengthInHead'], undefined]])).ports[0]).not.toHaveProperty(
      'lengthInHead',
    );
    const { engine: _, ...bare } = design;
    expect(done(setFields(bare, [[['engine', 'bore'], 86]])).engine).toEqual({ bore: 86 });
  });

  it('sets several as one, or none', () => {
    const both = done(
      setFields(design, [
        [['tubes', 'primary', 'outsideDiameter'], 2],
        [['tubes', 'primary', 'wall'], 0.5],
      ]),
    );
    expect(both.tubes.primary).toMatchObject({ outsideDiameter: 2, wall: 0.5 });
    expect(why(setFields(design, [[['tubes', 'primary', 'outsideDiameter'], 2]]))).toMatch(
      /^tubes\/primary\/wall: less than half/,
    );
  });
});

describe('renaming', () => {
  it('takes every reference along', () => {
    const ports = done(rename(design, { kind: 'port', id: 'p1' }, 'front'));
    expect(ports.runners[0]!.from).toEqual({ port: 'front' });
    expect(ports.flanges![0]!.ports[0]).toBe('front');
    const merges = done(rename(design, { kind: 'merge', id: 'm1' }, 'first'));
    expect(merges.runners.map((r) => r.to.merge)).toEqual(['first', 'first', 'm2', 'm2']);
    expect(merges.runners[2]!.from).toEqual({ merge: 'first' });
    const tubes = done(rename(design, { kind: 'tooling', id: 'primary' }, 'thin'));
    expect([Object.keys(tubes.tubes), Object.keys(tubes.tooling)]).toEqual([
      ['thin', 'secondary'],
      ['thin', 'secondary'],
    ]);
    expect(tubes.runners.map((r) => r.tube)).toEqual(['thin', 'thin', 'secondary', 'thin']);
    const groups = done(rename(design, { kind: 'group', id: 'primaries' }, 'all'));
    expect(groups.runners.map((r) => r.group)).toEqual(['all', 'all', 'secondaries', undefined]);
  });

  it('lets capitals change, and refuses a name that is taken or cannot be one', () => {
    expect(done(rename(design, { kind: 'port', id: 'p1' }, 'P1')).ports[0]!.id).toBe('P1');
    expect(why(rename(design, { kind: 'tube', id: 'primary' }, 'Secondary'))).toBe(
      'tubes/primary/id: a name not yet used, capitals or not',
    );
    expect(why(rename(design, { kind: 'group', id: 'primaries' }, '__proto__'))).toMatch(
      /^groups\/primaries\/id: 1 to 64/,
    );
  });
});

describe('removing', () => {
  it('lets go of what only lists the thing', () => {
    const next = done(remove(design, [{ kind: 'group', id: 'primaries' }]));
    expect(next.runners.map((r) => r.group)).toEqual([undefined, undefined, 'secondaries', undefined]);
    const both = done(
      remove(design, [
        { kind: 'port', id: 'p1' },
        { kind: 'runner', id: 'r1' },
      ]),
    );
    expect(both.flanges![0]!.ports).toEqual(['Port_2-b c', '3']);
    const studs = done(remove(design, [{ kind: 'fastener', id: 'f1', index: 0 }]));
    expect(studs.flanges![0]!.fasteners).toEqual([design.flanges![0]!.fasteners![1]]);
  });

  it('refuses what a runner cannot do without, and says which', () => {
    expect(why(remove(design, [{ kind: 'port', id: 'p1' }]))).toBe(
      'ports/p1: remove that runner too, or let it start elsewhere first',
    );
    expect(why(remove(design, [{ kind: 'merge', id: 'm1' }]))).toMatch(/^merges\/m1: remove that runner too/);
    expect(why(remove(design, [{ kind: 'tube', id: 'primary' }]))).toMatch(/^tubes\/primary: .*give it another tube/);
    expect(why(remove(design, [{ kind: 'design', id: '' }]))).toMatch(/^document/);
  });
});

describe('adding', () => {
  it('puts a port one pitch on, for the next cylinder, or on the last where every cylinder has one', () => {
    const { edited } = addPort(design);
    expect(done(edited).ports.at(-1)).toMatchObject({ id: 'p2', cylinder: 3, position: [285, 0, 0] });
    const { engine: _, ...bare } = design;
    expect(done(addPort(bare).edited).ports.at(-1)!.cylinder).toBe(4);
  });

  it('runs a new runner from a free port to a free inlet, like its neighbours, and refuses without', () => {
    const withPort = done(addPort(design).edited);
    // Two inlets of m1 and both of m2 are spoken for, so there is nowhere to go yet.
    expect(why(addRunner(withPort).edited)).toMatch(/^runners\/r3\/to: a free inlet/);
    const roomy = done(setFields(withPort, [[['merges', 0, 'inlets'], 3]]));
    expect(done(addRunner(roomy).edited).runners.at(-1)).toEqual({
      id: 'r3',
      tube: 'primary',
      group: 'primaries',
      from: { port: 'p2' },
      to: { merge: 'm1' },
    });
    expect(why(addRunner(done(remove(roomy, [{ kind: 'port', id: 'p2' }]))).edited)).toMatch(
      /^runners\/r3\/from|^runners\/r3\/to/,
    );
  });

  it('adds fasteners like the last, and says where there is no flange', () => {
    expect(done(addFastener(design, 'f1').edited).flanges![0]!.fasteners!.at(-1)).toEqual({
      position: [60, 0, -12],
      kind: 'bolt',
      thread: 'M8',
      hole: 9,
    });
    expect(why(addFastener(design, 'f9').edited)).toMatch(/^flanges\/f9/);
  });

  it('adds surroundings with room to them', () => {
    expect(done(addSurrounding(design, 'box').edited).surroundings!.at(-1)).toMatchObject({
      shape: 'box',
      clearance: 10,
    });
  });

  it.each(['box', 'capsule', 'cylinder', 'plane'] as const)(
    'adds a %s in front of the ports, whichever way they look',
    (shape) => {
      const turned: Design = { ...design, ports: design.ports.map((port) => ({ ...port, direction: [-1, 0, -0.2] })) };
      for (const [from, way] of [
        [design, [0, 1, 0]],
        [turned, [-1, 0, 0]],
      ] as const) {
        const added = done(addSurrounding(from, shape).edited).surroundings!.at(-1)!;
        const mean = (k: number) => from.ports.reduce((sum, p) => sum + p.position[k]!, 0) / from.ports.length;
        const off = middleOfSurrounding(added).map((x, k) => x - mean(k));
        const out = off[0]! * way[0] + off[1]! * way[1];
        expect(out).toBeGreaterThan(140);
        if (added.shape === 'plane') expect(added.normal.map((x, k) => x + way[k]!)).toEqual([0, 0, 0]);
      }
    },
  );

  it('adds a plane beyond all of the header, so that nothing of it is in the solid', () => {
    const plane = done(addSurrounding(design, 'plane').edited).surroundings!.at(-1)!;
    if (plane.shape !== 'plane') throw new Error('not a plane');
    for (const p of [...design.merges.map((m) => m.position), ...design.runners.flatMap((r) => r.points ?? [])]) {
      const ahead = p.reduce((sum, x, k) => sum + (x - plane.position[k]!) * plane.normal[k]!, 0);
      expect(ahead).toBeGreaterThan(99);
    }
  });

  it('adds a mesh as it is known to lie', () => {
    const pose = { position: [1, 2, 3], x: [0, 1, 0], y: [-1, 0, 0] } as const;
    const added = addSurrounding(design, { file: 'bay.ply', unit: 'in', pose, kind: 'structure', clearance: 12 });
    expect(done(added.edited).surroundings!.at(-1)).toMatchObject({
      shape: 'mesh',
      file: 'bay.ply',
      unit: 'in',
      pose,
      kind: 'structure',
      clearance: 12,
    });
  });
});

describe('duplicating', () => {
  it('stands aside, under a free name, without taking references', () => {
    const shaft = done(duplicate(design, { kind: 'surrounding', id: 'steering shaft' }).edited).surroundings!.at(-1)!;
    expect(shaft).toMatchObject({ id: 'steering shaft 1', a: [40, 100, 0], b: [40, 400, -300], kind: 'steering' });
    const tubes = done(duplicate(design, { kind: 'tube', id: 'primary' }).edited);
    expect(tubes.tubes['primary 1']).toEqual(design.tubes.primary);
    expect(tubes.tooling['primary 1']).toEqual(design.tooling.primary);
    expect(tubes.runners).toEqual(design.runners);
  });

  it('does not double a runner, whose port takes one only', () => {
    expect(why(duplicate(design, { kind: 'runner', id: 'r1' }).edited)).toBe('runners/r1: adding a new one');
  });
});

describe('openings', () => {
  it('keep their size as their shape changes', () => {
    const oval = { shape: 'oval', width: 40, height: 30 } as const;
    expect(reshapeOpening(oval, 'rounded-rectangle')).toEqual({
      shape: 'rounded-rectangle',
      width: 40,
      height: 30,
      corner: 7.5,
    });
    expect(reshapeOpening(oval, 'round')).toEqual({ shape: 'round', diameter: 30 });
    expect(reshapeOpening(oval, 'oval')).toBe(oval);
  });
});

describe('the engine', () => {
  const bare: Design = { ...design, ports: [], flanges: [], runners: [], sensors: [] };
  it('keeps banks whole and drops a firing order of another count', () => {
    const five = done(setCylinders(bare, 5)).engine!;
    expect(five.banks).toEqual([
      [1, 2],
      [3, 4, 5],
    ]);
    expect(five).not.toHaveProperty('firingOrder');
    expect(done(setCylinders(bare, 2)).engine!.banks).toEqual([[1, 2]]);
    expect(why(setCylinders(design, 2))).toMatch(/^ports\/3\/cylinder/);
  });

  it('takes the count from a full firing order', () => {
    expect(done(setFiringOrder(bare, [1, 3, 4, 2])).engine).toMatchObject({ cylinders: 4, firingOrder: [1, 3, 4, 2] });
    expect(why(setFiringOrder(bare, [1, 3, 3]))).toMatch(/^engine\/firingOrder/);
  });

  it('reads orders and banks as people write them', () => {
    expect(readCylinders('1-3-4-2')).toEqual([1, 3, 4, 2]);
    expect(readCylinders('1, 3 4  2')).toEqual([1, 3, 4, 2]);
    expect(readCylinders('1-3-x')).toBeNull();
    expect(readCylinders('')).toBeNull();
    expect(readBanks('1-2 | 3-4')).toEqual([
      [1, 2],
      [3, 4],
    ]);
    expect(
      writeBanks([
        [1, 2],
        [3, 4],
      ]),
    ).toBe('1-2 | 3-4');
  });
});

/** What an import asks for before it adds anything, and what it then adds. */
import { describe, expect, it } from 'vitest';
import { resolveHeader } from '../../geometry';
import { addSurrounding } from '../../shared/design/edit';
import type { Corners } from '../../src/app/meshes/facts';
import { firstWish, type ImportWish, knownPlaces, outcomeOf, withCorner } from '../../src/app/meshes/importing/wish';
import { lieOf, placed } from '../../src/app/meshes/lie';
import { designWith } from './designs';

const design = designWith(undefined);
const places = knownPlaces(resolveHeader(design));
/** Of the file, in its own unit. */
const box: Corners = [
  [0, 0, 0],
  [40, 20, 10],
];
const ask = (wish: Partial<ImportWish>, file = 'bay.ply') =>
  outcomeOf(file, box, { ...firstWish(file), ...wish }, places);

describe('an import', () => {
  it('asks for the unit, and takes it from the standard for GLB alone', () => {
    expect(ask({})).toMatchObject({ ok: false, wants: expect.stringMatching(/unit/) });
    expect(ask({}, 'bay.glb')).toMatchObject({ ok: true, mesh: { unit: 'm' } });
    expect(ask({ unit: 'in' })).toMatchObject({ ok: true, mesh: { file: 'bay.ply', unit: 'in' } });
  });

  it('takes the kind’s clearance where none was typed', () => {
    expect(ask({ unit: 'mm', kind: 'fuel-line' })).toMatchObject({ mesh: { kind: 'fuel-line', clearance: 75 } });
    expect(ask({ unit: 'mm', kind: 'fuel-line', clearance: 5 })).toMatchObject({ mesh: { clearance: 5 } });
  });

  it('says which point is missing, then places by all three, in inches', () => {
    const typed = (x: number, y: number, z: number) => ({ typed: [x, y, z] as const });
    const points: Partial<ImportWish> = { unit: 'in', placing: 'three points' };
    expect(ask(points)).toMatchObject({ ok: false, wants: expect.stringMatching(/Point 1: click/) });
    const from: ImportWish['from'] = [
      [0, 0, 0],
      [4, 0, 0],
      [0, 2, 0],
    ];
    expect(ask({ ...points, from })).toMatchObject({ ok: false, wants: expect.stringMatching(/Point 1: say where/) });
    const half = ask({ ...points, from, to: [typed(10, 20, 30), { key: places[0]!.key }, { typed: [1, null, 3] }] });
    expect(half).toMatchObject({ ok: false, wants: expect.stringMatching(/Point 3: say where/) });
    // A quarter turn about z, and moved.
    const to: ImportWish['to'] = [typed(10, 20, 30), typed(10, 121.6, 30), typed(-40.8, 20, 30)];
    const all = ask({ ...points, from, to });
    if (!all.ok) throw new Error(all.problem ?? all.wants ?? '');
    expect(Math.max(...all.off!)).toBeLessThan(1e-9);
    const { edited } = addSurrounding(design, all.mesh);
    if (!edited.ok) throw new Error('not added');
    const mesh = edited.design.surroundings!.at(-1)!;
    if (mesh.shape !== 'mesh') throw new Error('not a mesh');
    const [x, y, z] = placed(lieOf(mesh), [1, 0, 1]);
    expect([x, y, z].map((n) => Math.round(n * 1e6) / 1e6)).toEqual([10, 45.4, 55.4]);
  });

  it('refuses points in a line with the remedy', () => {
    const line: ImportWish['from'] = [
      [0, 0, 0],
      [4, 0, 0],
      [8, 0, 0],
    ];
    const to: ImportWish['to'] = [{ typed: [0, 0, 0] }, { typed: [100, 0, 0] }, { typed: [0, 100, 0] }];
    expect(ask({ unit: 'in', placing: 'three points', from: line, to })).toMatchObject({
      ok: false,
      problem: expect.stringMatching(/points on the scan/),
    });
  });

  it('refuses a crop that nothing reaches into; a corner pulled past the other swaps with it', () => {
    const beside: Corners = [
      [50, 0, 0],
      [60, 5, 5],
    ];
    expect(ask({ unit: 'mm', crop: beside })).toMatchObject({ ok: false, problem: expect.stringMatching(/widen/) });
    // In inches the mesh reaches there.
    expect(ask({ unit: 'in', crop: beside })).toMatchObject({ ok: true, mesh: { crop: beside } });
    expect(withCorner(box, 0, 0, 90)).toEqual([
      [40, 0, 0],
      [90, 20, 10],
    ]);
  });

  it('knows ports, fasteners and collectors by name, each once', () => {
    expect(new Set(places.map(({ key }) => key)).size).toBe(places.length);
    expect(places.map(({ name }) => name)).toEqual(expect.arrayContaining([expect.stringMatching(/^port /)]));
  });
});

/** Where parts stand while they are apart: back from the tubes, out from the axis, down the flow; joined, each in its place. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dot, type Header, norm, type PartKind, reject, resolveHeader, sub } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Vec3 } from '../../../shared/vec3';
import { stillOwned } from '../../../src/app/made/owned';
import type { ShownPart } from '../../../src/app/made/shape';
import { ASSEMBLED, explodedBy } from '../../../src/app/viewport/model/explode';
import { joinShapes, middleOfPart } from '../../../src/app/viewport/model/joinShapes';
import { plates } from '../../../src/app/viewport/model/plates';

const EXAMPLES = join(import.meta.dirname, '../../../public/examples');
const example = (name: string): Header =>
  resolveHeader(parseDesign(readFileSync(join(EXAMPLES, `${name}.evenrun.json`), 'utf8')));

/** One triangle whose middle lies 20 mm down the part's own axis. */
const shape = (x = 0): ShownPart['shape'] => ({
  positions: Float32Array.of(x, 0, 10, x + 2, 0, 20, x, 4, 30),
  normals: Float32Array.of(0, 0, 1, 0, 0, 1, 0, 0, 1),
  shades: new Uint8Array(9),
  indices: Uint32Array.of(0, 1, 2),
  outerCount: 3,
  edges: Float32Array.of(x, 0, 10, x + 2, 0, 20),
  middle: [x + 1, 2, 20],
  half: [1, 2, 10],
});

function collector(header: Header, id: string): ShownPart[] {
  const merge = header.merges.get(id)!;
  const part = (name: string, kind: PartKind, pose: ShownPart['pose']): ShownPart => ({
    id: `collector ${id} ${name}`,
    name,
    kind,
    of: { kind: 'merge', id },
    pose,
    volume: 1,
    material: undefined,
    print: '',
    shape: shape(),
  });
  const { position, axis } = merge.body;
  const own = { position, direction: axis, up: merge.outlet.up };
  return [
    ...merge.inlets.map((pose, k) => part(`stub ${k + 1}`, 'stub', pose)),
    part('filler', 'filler', own),
    part('cone', 'cone', own),
    part('outlet', 'outlet', merge.outlet),
    part('joint', 'joint', merge.outlet),
  ];
}

const flangePart = (id: string): ShownPart => ({
  id: `flange ${id}`,
  kind: 'flange',
  name: 'plate',
  of: { kind: 'flange', id },
  pose: { position: [0, 0, 0], direction: [0, 0, 1], up: [0, 1, 0] },
  volume: 1,
  material: undefined,
  print: '',
  shape: shape(),
});

describe('a header taken apart', () => {
  const header = example('four-4-1');
  const [id] = [...header.merges.keys()] as [string];
  const parts = [...collector(header, id), flangePart(header.design.flanges![0]!.id)];
  const away = (share: number) => explodedBy(header, parts, share);
  const axis = header.merges.get(id)!.body.axis;
  const along = (name: string) => dot(away(1).parts.get(`collector ${id} ${name}`)!, axis);

  it('is together at nothing, and goes apart in proportion', () => {
    expect(away(0)).toBe(ASSEMBLED);
    for (const [name, whole] of away(1).parts)
      away(0.25)
        .parts.get(name)!
        .forEach((x, i) => {
          expect(x).toBeCloseTo(whole[i]! / 4, 9);
        });
  });

  it('moves each stub straight out from the axis, all as far', () => {
    const out = collector(header, id)
      .filter(({ kind }) => kind === 'stub')
      .map((part) => {
        const radial = reject(sub(middleOfPart(part), header.merges.get(id)!.body.position), axis);
        const moved = reject(away(1).parts.get(part.id)!, axis);
        expect(dot(moved, radial)).toBeCloseTo(norm(moved) * norm(radial), 6);
        return norm(moved);
      });
    expect(Math.min(...out)).toBeGreaterThan(10);
    expect(Math.max(...out) - Math.min(...out)).toBeLessThan(1e-9);
  });

  it('strings filler, cone, outlet and joint along the flow, none of them aside', () => {
    const places = ['stub 1', 'filler', 'cone', 'outlet', 'joint'].map(along);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    for (const name of ['filler', 'cone', 'outlet', 'joint'])
      expect(norm(reject(away(1).parts.get(`collector ${id} ${name}`)!, axis))).toBeLessThan(1e-9);
  });

  it('takes the flange off against the ports, the gasket farther and the head farthest; tubes from the ports stay', () => {
    const [plate] = plates(header);
    const { flange, gasket, head } = away(1).plates.get(plate!.id)!;
    const back = [flange, gasket, head].map((v) => -dot(v, plate!.normal));
    expect(back[0]).toBeGreaterThan(10);
    expect(back[1]).toBeGreaterThan(back[0]!);
    expect(back[2]).toBeGreaterThan(back[1]!);
    expect(away(1).parts.get(`flange ${plate!.id}`)).toEqual(flange);
    expect(away(1).runners.size).toBe(0);
  });
});

it('carries what hangs on a collector with its end, and the next collector with that', () => {
  const header = example('four-4-2-1');
  const firsts = [...header.merges.keys()].filter((id) =>
    header.runners.some(({ runner: { from } }) => 'merge' in from && from.merge === id),
  );
  const [last] = [...header.merges.keys()].filter((id) => !firsts.includes(id)) as [string];
  const parts = [...header.merges.keys()].flatMap((id) => collector(header, id));
  const { parts: moved, runners, merges } = explodedBy(header, parts, 1);
  for (const { runner } of header.runners) {
    const { from } = runner;
    if (!('merge' in from)) {
      expect(runners.has(runner.id)).toBe(false);
      continue;
    }
    const axis = header.merges.get(from.merge)!.body.axis;
    const joint = moved.get(`collector ${from.merge} joint`)!;
    expect(dot(runners.get(runner.id)!, axis)).toBeGreaterThan(dot(joint, axis));
  }
  const entering = header.runners.filter(({ runner }) => runner.to.merge === last);
  const base = merges.get(last)!;
  for (const k of [0, 1, 2] as const) {
    const mean = entering.reduce((sum, { runner }) => sum + runners.get(runner.id)![k], 0) / entering.length;
    expect(base[k]).toBeCloseTo(mean, 9);
  }
});

describe('parts and the header now drawn', () => {
  const header = example('four-4-1');
  const [id] = [...header.merges.keys()] as [string];
  const parts = collector(header, id);
  const change = (by: object) => {
    const merges = header.design.merges.map((m) => (m.id === id ? { ...m, ...by } : m));
    return resolveHeader({ ...header.design, merges }, header);
  };

  it('still hold for another way of the same runners', () => {
    const runners = header.design.runners.map((r) => ({ ...r, points: [...r.points!] }));
    const now = resolveHeader({ ...header.design, runners });
    expect(stillOwned(parts, header, now).get(`merge/${id}`)?.parts).toBe(
      stillOwned(parts, header, header).get(`merge/${id}`)?.parts,
    );
  });

  it('ride along with a collector that moved', () => {
    const position: Vec3 = [1, 2, 3];
    const { ride } = stillOwned(parts, header, change({ position })).get(`merge/${id}`)!;
    expect(ride?.from).toEqual(header.merges.get(id)!.outlet);
    expect(ride?.to).toEqual(change({ position }).merges.get(id)!.outlet);
  });

  it('no longer hold for a collector that was changed, nor for another tube in it', () => {
    expect(stillOwned(parts, header, change({ length: 171 })).size).toBe(0);
    const tubes = Object.fromEntries(
      Object.entries(header.design.tubes).map(([name, tube]) => [name, { ...tube, wall: tube.wall + 0.1 }]),
    );
    expect(stillOwned(parts, header, resolveHeader({ ...header.design, tubes })).size).toBe(0);
  });
});

it('joins shapes each in its own place, what is seen from outside first', () => {
  const inside = { ...shape(5), outerCount: 0 };
  const turned = { position: [100, 0, 0] as Vec3, direction: [1, 0, 0] as Vec3, up: [0, 0, 1] as Vec3 };
  const flat = { position: [0, 0, 0] as Vec3, direction: [0, 0, 1] as Vec3, up: [0, 1, 0] as Vec3 };
  const joined = joinShapes([
    { shape: inside, pose: turned },
    { shape: shape(), pose: flat },
  ]);
  expect(joined.outerCount).toBe(3);
  expect([...joined.indices]).toEqual([3, 4, 5, 0, 1, 2]);
  // Of the turned one: z along its direction, y along its up, x = up × direction.
  expect([...joined.positions.subarray(0, 3)]).toEqual([110, 5, 0]);
  expect([...joined.normals.subarray(0, 3)]).toEqual([1, 0, 0]);
  expect([...joined.edges.subarray(6)]).toEqual([0, 0, 10, 2, 0, 20]);
});

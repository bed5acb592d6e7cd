/**
 * Where a GLB's meshes stand: its scene's tree of nodes walked, each node's own transform after its parents' (glTF 2.0, 3.5).
 * Metres. Matrices are of sixteen numbers, column by column.
 */
import { MeshError } from '../mesh/meshError';
import { type Glb, type GltfNode, listOf } from './container';

export type Matrix = readonly number[];
export type Standing = { readonly mesh: number; readonly matrix: Matrix };

const IDENTITY: Matrix = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/** Every mesh of the scene that is shown first, once for each node that it hangs on. */
export function standings({ json }: Glb): Standing[] {
  const nodes = listOf<GltfNode>(json.nodes);
  const scene = listOf<{ nodes?: unknown }>(json.scenes)[json.scene ?? 0];
  const children = new Set(nodes.flatMap((node) => listOf<number>(node?.children)));
  const roots = scene ? listOf<number>(scene.nodes) : [...nodes.keys()].filter((i) => !children.has(i));
  const found: Standing[] = [];
  const met = new Set<number>();
  const waiting = roots.map((index) => ({ index, above: IDENTITY })).reverse();
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const node = nodes[next.index];
    if (typeof node !== 'object' || node === null)
      throw new MeshError(`its scene names node ${next.index}, which is not there`);
    if (met.has(next.index))
      throw new MeshError(`its node ${next.index} hangs on two others or on itself; export it again`);
    met.add(next.index);
    const matrix = times(next.above, ownMatrix(node, next.index));
    if (typeof node.mesh === 'number') found.push({ mesh: node.mesh, matrix });
    for (const index of [...listOf<number>(node.children)].reverse()) waiting.push({ index, above: matrix });
  }
  return found;
}

function ownMatrix(node: GltfNode, index: number): Matrix {
  const numbers = (given: unknown, usual: readonly number[]): readonly number[] => {
    if (given === undefined) return usual;
    const list = listOf<number>(given);
    if (list.length === usual.length && list.every(Number.isFinite)) return list;
    throw new MeshError(`its node ${index} stands in no place: ${usual.length} finite numbers are wanted`);
  };
  if (node.matrix !== undefined) return numbers(node.matrix, IDENTITY);
  const [tx, ty, tz] = numbers(node.translation, [0, 0, 0]) as [number, number, number];
  const [x, y, z, w] = numbers(node.rotation, [0, 0, 0, 1]) as [number, number, number, number];
  const [sx, sy, sz] = numbers(node.scale, [1, 1, 1]) as [number, number, number];
  // A unit quaternion as three columns.
  return [
    sx * (1 - 2 * (y * y + z * z)),
    sx * 2 * (x * y + z * w),
    sx * 2 * (x * z - y * w),
    0,
    sy * 2 * (x * y - z * w),
    sy * (1 - 2 * (x * x + z * z)),
    sy * 2 * (y * z + x * w),
    0,
    sz * 2 * (x * z + y * w),
    sz * 2 * (y * z - x * w),
    sz * (1 - 2 * (x * x + y * y)),
    0,
    tx,
    ty,
    tz,
    1,
  ];
}

function times(a: Matrix, b: Matrix): Matrix {
  const out = new Array<number>(16);
  for (let column = 0; column < 4; column++)
    for (let row = 0; row < 4; row++) {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += a[4 * k + row]! * b[4 * column + k]!;
      out[4 * column + row] = sum;
    }
  return out;
}

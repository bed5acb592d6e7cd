/** Numbers of a GLB's block of bytes by their accessor (glTF 2.0, 3.6): places and corners' numbers, bounds looked to first. */
import { MeshError } from '../mesh/meshError';
import { type Accessor, type BufferView, type Glb, listOf } from './container';

const BYTE = 5120;
const UNSIGNED_BYTE = 5121;
const SHORT = 5122;
const UNSIGNED_SHORT = 5123;
const UNSIGNED_INT = 5125;
const FLOAT = 5126;
const SIZES: Readonly<Record<number, number>> = {
  [BYTE]: 1,
  [UNSIGNED_BYTE]: 1,
  [SHORT]: 2,
  [UNSIGNED_SHORT]: 2,
  [UNSIGNED_INT]: 4,
  [FLOAT]: 4,
};
/** What a normalised number of each kind is divided by (3.6.2.2.). */
const FULL: Readonly<Record<number, number>> = {
  [BYTE]: 127,
  [UNSIGNED_BYTE]: 255,
  [SHORT]: 32767,
  [UNSIGNED_SHORT]: 65535,
};

type Opened = { readonly view: DataView; readonly stride: number; readonly type: number; readonly count: number };

/** How many it has, from its description alone. */
export function countOf(glb: Glb, index: unknown, what: string): number {
  const count = accessorOf(glb, index, what).count;
  if (!Number.isInteger(count) || count! < 0) throw new MeshError(`${what}: a count that is no whole number`);
  return count!;
}

/** Three numbers a vertex. */
export function placesOf(glb: Glb, index: unknown, what: string): Float64Array {
  const accessor = accessorOf(glb, index, what);
  if (accessor.type !== 'VEC3') throw new MeshError(`${what}: positions are not of three numbers each`);
  const { view, stride, type, count } = open(glb, accessor, 3, what);
  if (type === UNSIGNED_INT) throw new MeshError(`${what}: positions cannot be whole numbers of 32 bits`);
  const read = reader(view, type);
  const full = accessor.normalized === true ? (FULL[type] ?? 1) : 1;
  const size = SIZES[type]!;
  const places = new Float64Array(3 * count);
  for (let i = 0; i < count; i++)
    for (let k = 0; k < 3; k++) {
      const value = read(i * stride + k * size);
      if (!Number.isFinite(value))
        throw new MeshError(
          `${what}: vertex ${i + 1} of ${count} has a coordinate that is ${value}, not a finite number`,
        );
      places[3 * i + k] = full === 1 ? value : Math.max(-1, value / full);
    }
  return places;
}

export function indicesOf(glb: Glb, index: unknown, most: number, what: string): Uint32Array {
  const accessor = accessorOf(glb, index, what);
  if (accessor.type !== 'SCALAR') throw new MeshError(`${what}: indices are not single numbers`);
  const { view, stride, type, count } = open(glb, accessor, 1, what);
  if (type !== UNSIGNED_BYTE && type !== UNSIGNED_SHORT && type !== UNSIGNED_INT)
    throw new MeshError(`${what}: indices are of a kind that glTF does not allow`);
  const read = reader(view, type);
  const indices = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    const own = read(i * stride);
    if (own >= most) throw new MeshError(`${what}: a corner names vertex ${own}; allowed: 0 to ${most - 1}`);
    indices[i] = own;
  }
  return indices;
}

function accessorOf({ json }: Glb, index: unknown, what: string): Accessor {
  const found = listOf<Accessor>(json.accessors)[index as number];
  if (typeof found !== 'object' || found === null)
    throw new MeshError(`${what}: names numbers that are not in the file`);
  return found;
}

function open({ json, bin }: Glb, accessor: Accessor, wide: number, what: string): Opened {
  if (accessor.sparse !== undefined)
    throw new MeshError(`${what}: it is written sparse, which is not read; export it as plain glTF 2.0`);
  const { componentType: type = 0, byteOffset = 0, count = 0 } = accessor;
  const size = SIZES[type];
  if (size === undefined) throw new MeshError(`${what}: a kind of number that glTF does not have (${type})`);
  const view = listOf<BufferView>(json.bufferViews)[accessor.bufferView as number];
  if (!view) throw new MeshError(`${what}: its numbers are not in the file`);
  const { byteOffset: start = 0, byteLength = 0, byteStride, buffer } = view;
  const stride = byteStride ?? wide * size;
  const whole = [start, byteLength, byteOffset, count, stride].every((n) => Number.isInteger(n) && n >= 0);
  const end = count > 0 ? byteOffset + (count - 1) * stride + wide * size : byteOffset;
  if (!whole || buffer !== 0 || stride < wide * size || end > byteLength || start + byteLength > bin.length)
    throw new MeshError(`${what}: it is cut short or mislabelled: its numbers run past the file’s ${bin.length} bytes`);
  return { view: new DataView(bin.buffer, bin.byteOffset + start + byteOffset, end - byteOffset), stride, type, count };
}

function reader(view: DataView, type: number): (at: number) => number {
  switch (type) {
    case BYTE:
      return (at) => view.getInt8(at);
    case UNSIGNED_BYTE:
      return (at) => view.getUint8(at);
    case SHORT:
      return (at) => view.getInt16(at, true);
    case UNSIGNED_SHORT:
      return (at) => view.getUint16(at, true);
    case UNSIGNED_INT:
      return (at) => view.getUint32(at, true);
    default:
      return (at) => view.getFloat32(at, true);
  }
}

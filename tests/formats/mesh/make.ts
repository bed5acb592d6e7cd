/** Small mesh files of every kind, written here and nowhere else: a tetrahedron, or what a test puts in. */
export const text = (s: string): Uint8Array => new TextEncoder().encode(s);

export const PLACES = [0, 0, 0, 3, 0, 0, 0, 4, 0, 0, 0, 5] as const;
export const FACES = [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3] as const;
/** The tetrahedron as its readers should give it. */
export const SOUP = FACES.flatMap((v) => PLACES.slice(3 * v, 3 * v + 3));

export type GltfLike = Record<string, unknown>;

/** A GLB of a description and a block of bytes. */
export function glb(json: GltfLike, bin = new Uint8Array(0)): Uint8Array {
  const padded = (bytes: Uint8Array, by: number): Uint8Array => {
    const out = new Uint8Array(4 * Math.ceil(bytes.length / 4)).fill(by);
    out.set(bytes);
    return out;
  };
  const chunks = [
    [0x4e4f534a, padded(text(JSON.stringify(json)), 0x20)],
    [0x004e4942, padded(bin, 0)],
  ] as const;
  const length = chunks.reduce((sum, [, bytes]) => sum + 8 + bytes.length, 12);
  const out = new Uint8Array(length);
  const view = new DataView(out.buffer);
  view.setUint32(0, 0x46546c67, true);
  view.setUint32(4, 2, true);
  view.setUint32(8, length, true);
  let at = 12;
  for (const [kind, bytes] of chunks) {
    view.setUint32(at, bytes.length, true);
    view.setUint32(at + 4, kind, true);
    out.set(bytes, at + 8);
    at += 8 + bytes.length;
  }
  return out;
}

// biome-ignore lint/suspicious/noExplicitAny: a stranger's JSON may have anything anywhere
export type Loose = any;

/** The tetrahedron in a GLB: floats, then indices of two bytes. */
export function tetrahedronGlb(change: (json: Loose) => void = () => {}): Uint8Array {
  const bin = new Uint8Array(48 + 24);
  new Float32Array(bin.buffer, 0, 12).set(PLACES);
  new Uint16Array(bin.buffer, 48, 12).set(FACES);
  const json = {
    asset: { version: '2.0' },
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [{ mesh: 0 }],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
    accessors: [
      { bufferView: 0, componentType: 5126, count: 4, type: 'VEC3' },
      { bufferView: 1, componentType: 5123, count: 12, type: 'SCALAR' },
    ],
    bufferViews: [
      { buffer: 0, byteOffset: 0, byteLength: 48 },
      { buffer: 0, byteOffset: 48, byteLength: 24 },
    ],
    buffers: [{ byteLength: 72 }],
  };
  change(json);
  return glb(json, bin);
}

/** The tetrahedron as PLY. */
export function tetrahedronPly(format: 'ascii' | 'little' | 'big', scalar = 'float', index = 'int'): Uint8Array {
  const name = { ascii: 'ascii', little: 'binary_little_endian', big: 'binary_big_endian' }[format];
  const head = `ply\nformat ${name} 1.0\ncomment made by hand\nelement vertex 4\nproperty ${scalar} x\nproperty uchar red\nproperty ${scalar} y\nproperty ${scalar} z\nelement face 4\nproperty list uchar ${index} vertex_indices\nproperty short mark\nend_header\n`;
  if (format === 'ascii') {
    const vertices = [0, 1, 2, 3].map((v) => `${PLACES[3 * v]} 200 ${PLACES[3 * v + 1]} ${PLACES[3 * v + 2]}`);
    const faces = [0, 1, 2, 3].map((f) => `3 ${FACES.slice(3 * f, 3 * f + 3).join(' ')} -7`);
    return text(`${head}${[...vertices, ...faces].join('\n')}\n`);
  }
  const body: number[] = [];
  const put = (value: number, type: string): void => {
    const view = new DataView(new ArrayBuffer(8));
    const little = format === 'little';
    const [size, write] = WRITERS[type]!;
    write(view, value, little);
    for (let i = 0; i < size; i++) body.push(view.getUint8(i));
  };
  for (let v = 0; v < 4; v++) {
    put(PLACES[3 * v]!, scalar);
    put(200, 'uchar');
    put(PLACES[3 * v + 1]!, scalar);
    put(PLACES[3 * v + 2]!, scalar);
  }
  for (let f = 0; f < 4; f++) {
    put(3, 'uchar');
    for (let k = 0; k < 3; k++) put(FACES[3 * f + k]!, index);
    put(-7, 'short');
  }
  const out = new Uint8Array(head.length + body.length);
  out.set(text(head));
  out.set(body, head.length);
  return out;
}

const WRITERS: Record<string, [number, (view: DataView, value: number, little: boolean) => void]> = {
  char: [1, (view, value) => view.setInt8(0, value)],
  uchar: [1, (view, value) => view.setUint8(0, value)],
  short: [2, (view, value, little) => view.setInt16(0, value, little)],
  ushort: [2, (view, value, little) => view.setUint16(0, value, little)],
  int: [4, (view, value, little) => view.setInt32(0, value, little)],
  uint: [4, (view, value, little) => view.setUint32(0, value, little)],
  float: [4, (view, value, little) => view.setFloat32(0, value, little)],
  double: [8, (view, value, little) => view.setFloat64(0, value, little)],
};

/**
 * A GLB file taken apart: its JSON and its one block of bytes (glTF 2.0, 4.4). What would have to be fetched from elsewhere or
 * unpacked by a method that is not at hand is refused by name; nothing outside the file is ever looked for.
 */
import { MeshError } from '../mesh/meshError';

const MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const BIN_CHUNK = 0x004e4942;
/** A scan's description is a few kilobytes. */
const MOST_JSON = 32 * 2 ** 20;

export type Accessor = {
  readonly bufferView?: number;
  readonly byteOffset?: number;
  readonly componentType?: number;
  readonly normalized?: boolean;
  readonly count?: number;
  readonly type?: string;
  readonly sparse?: unknown;
};
export type Primitive = {
  readonly attributes?: Readonly<Record<string, number>>;
  readonly indices?: number;
  readonly mode?: number;
};
export type GltfNode = {
  readonly mesh?: number;
  readonly children?: readonly number[];
  readonly matrix?: readonly number[];
  readonly translation?: readonly number[];
  readonly rotation?: readonly number[];
  readonly scale?: readonly number[];
};
export type BufferView = {
  readonly buffer?: number;
  readonly byteOffset?: number;
  readonly byteLength?: number;
  readonly byteStride?: number;
};
export type Gltf = {
  readonly asset?: { readonly version?: string };
  readonly scene?: number;
  readonly scenes?: readonly { readonly nodes?: readonly number[] }[];
  readonly nodes?: readonly GltfNode[];
  readonly meshes?: readonly { readonly primitives?: readonly Primitive[] }[];
  readonly accessors?: readonly Accessor[];
  readonly bufferViews?: readonly BufferView[];
  readonly buffers?: readonly { readonly uri?: unknown; readonly byteLength?: number }[];
  readonly extensionsRequired?: readonly string[];
};
export type Glb = { readonly json: Gltf; readonly bin: Uint8Array };

/** @throws MeshError */
export function takeApart(bytes: Uint8Array): Glb {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 20 || view.getUint32(0, true) !== MAGIC) throw new MeshError('it is not a GLB file');
  const version = view.getUint32(4, true);
  if (version !== 2)
    throw new MeshError(`it is glTF of version ${version}; only 2 is read: export it again as glTF 2.0`);
  const promised = view.getUint32(8, true);
  if (promised > bytes.length)
    throw new MeshError(
      `it is cut short: its head promises ${promised} bytes, it has ${bytes.length}; copy or export it again`,
    );
  let json: Gltf | null = null;
  let bin = new Uint8Array(0);
  for (let at = 12; at + 8 <= promised; ) {
    const length = view.getUint32(at, true);
    const kind = view.getUint32(at + 4, true);
    if (at + 8 + length > promised) throw new MeshError('it is cut short: a part of it runs past its end');
    const chunk = bytes.subarray(at + 8, at + 8 + length);
    if (kind === JSON_CHUNK && !json) json = parse(chunk);
    else if (kind === BIN_CHUNK && bin.length === 0) bin = chunk as Uint8Array<ArrayBuffer>;
    at += 8 + length;
  }
  if (!json) throw new MeshError('it has no description in it; export it again');
  insistSelfContained(json);
  return { json, bin };
}

function parse(chunk: Uint8Array): Gltf {
  if (chunk.length > MOST_JSON)
    throw new MeshError(`its description has ${chunk.length} bytes; at most ${MOST_JSON} are read`);
  try {
    const found: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(chunk));
    if (typeof found === 'object' && found !== null && !Array.isArray(found)) return found as Gltf;
  } catch {
    // Told below, as for anything else that is no description.
  }
  throw new MeshError('its description is not JSON; export it again');
}

/** Ways of writing that leave the triangles as they are. */
const isHarmless = (name: string): boolean =>
  name === 'KHR_mesh_quantization' || /^KHR_(materials_|texture_|lights_)|^EXT_texture_/.test(name);

const PACKED: Readonly<Record<string, string>> = {
  KHR_draco_mesh_compression: 'Draco compression',
  EXT_meshopt_compression: 'meshopt compression',
  KHR_meshopt_compression: 'meshopt compression',
};

function insistSelfContained(json: Gltf): void {
  for (const name of listOf<unknown>(json.extensionsRequired)) {
    if (typeof name === 'string' && isHarmless(name)) continue;
    const known = typeof name === 'string' ? PACKED[name] : undefined;
    throw new MeshError(
      known
        ? `it needs ${known} to be read (${name}); export it without compression`
        : `it needs "${String(name).slice(0, 60)}" to be read, which is not known here; export it as plain glTF 2.0`,
    );
  }
  for (const [i, buffer] of listOf<{ uri?: unknown }>(json.buffers).entries())
    if (buffer?.uri !== undefined)
      throw new MeshError(
        `its buffer ${i} lies outside the file ("${String(buffer.uri).slice(0, 60)}"), and nothing is fetched; export it as one GLB with everything in it`,
      );
}

/** A stranger's JSON may have anything where a list is due. */
export const listOf = <T>(found: unknown): readonly T[] => (Array.isArray(found) ? found : []);

import { describe, expect, test } from 'vitest';
import { readGlb } from '../../../src/formats/glb/read';
import { MeshError } from '../../../src/formats/mesh/meshError';
import { glb, type Loose, PLACES, SOUP, tetrahedronGlb, text } from '../mesh/make';

const quarter = [0, 0, Math.SQRT1_2, Math.SQRT1_2];
const near = (soup: Float32Array, expected: readonly number[]) => {
  expect(soup.length).toBe(expected.length);
  for (const [i, x] of expected.entries()) expect(soup[i]).toBeCloseTo(x, 5);
};

describe('reading GLB', () => {
  test('indexed triangles', () => expect([...readGlb(tetrahedronGlb())]).toEqual(SOUP));

  test('without indices; strips and fans', () => {
    const [a, b, c, d] = [0, 1, 2, 3].map((v) => PLACES.slice(3 * v, 3 * v + 3)) as [
      number[],
      number[],
      number[],
      number[],
    ];
    const mode = (m?: number) =>
      readGlb(
        tetrahedronGlb((json) => {
          delete json.meshes[0].primitives[0].indices;
          if (m !== undefined) json.meshes[0].primitives[0].mode = m;
        }),
      );
    expect([...mode()]).toEqual([...a, ...b, ...c]);
    expect([...mode(5)]).toEqual([...a, ...b, ...c, ...b, ...c, ...d]);
    expect([...mode(6)]).toEqual([...a, ...b, ...c, ...a, ...c, ...d]);
  });

  test('indices of one and of four bytes', () => {
    for (const [type, size] of [
      [5121, 1],
      [5125, 4],
    ] as const) {
      const bin = new Uint8Array(48 + 3 * size);
      new Float32Array(bin.buffer, 0, 12).set(PLACES);
      for (let i = 0; i < 3; i++) bin[48 + i * size] = 3 - i;
      const json = {
        asset: { version: '2.0' },
        nodes: [{ mesh: 0 }],
        meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
        accessors: [
          { bufferView: 0, componentType: 5126, count: 4, type: 'VEC3' },
          { bufferView: 1, componentType: type, count: 3, type: 'SCALAR' },
        ],
        bufferViews: [
          { buffer: 0, byteLength: 48 },
          { buffer: 0, byteOffset: 48, byteLength: 3 * size },
        ],
        buffers: [{ byteLength: bin.length }],
      };
      expect([...readGlb(glb(json, bin))]).toEqual([0, 0, 5, 0, 4, 0, 3, 0, 0]);
    }
  });

  test('quantised and normalised positions, with a stride', () => {
    const bin = new Uint8Array(3 * 8);
    const view = new DataView(bin.buffer);
    [
      [0, 0, 0],
      [65535, 0, 0],
      [0, 13107, 65535],
    ].forEach((p, i) => void p.forEach((x, k) => void view.setUint16(8 * i + 2 * k, x, true)));
    const json = {
      asset: { version: '2.0' },
      extensionsRequired: ['KHR_mesh_quantization', 'KHR_materials_unlit'],
      nodes: [{ mesh: 0, scale: [2, 2, 2] }],
      meshes: [{ primitives: [{ attributes: { POSITION: 0 } }] }],
      accessors: [{ bufferView: 0, componentType: 5123, normalized: true, count: 3, type: 'VEC3' }],
      bufferViews: [{ buffer: 0, byteLength: 24, byteStride: 8 }],
      buffers: [{ byteLength: 24 }],
    };
    near(readGlb(glb(json, bin)), [0, 0, 0, 2, 0, 0, 0, 0.4, 2]);
    const plain = { ...json, nodes: [{ mesh: 0 }], accessors: [{ ...json.accessors[0], normalized: false }] };
    near(readGlb(glb(plain, bin)), [0, 0, 0, 65535, 0, 0, 0, 13107, 65535]);
  });

  test('nodes: moved, turned, scaled, one within another, one mesh twice; only the scene that is shown', () => {
    const soup = readGlb(
      tetrahedronGlb((json) => {
        json.nodes = [
          { children: [1, 2], translation: [10, 0, 0] },
          { mesh: 0, rotation: quarter, scale: [1, 2, 1] },
          { mesh: 0, matrix: [0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1, 0, 0, 0, 7, 1] },
          { mesh: 0 },
        ];
        json.scenes = [{ nodes: [3] }, { nodes: [0] }];
        json.scene = 1;
      }),
    );
    const turned = (k: number, dz: number) =>
      SOUP.map((_, i) => {
        const o = 3 * Math.floor(i / 3);
        const [x, y, z] = [SOUP[o]!, SOUP[o + 1]!, SOUP[o + 2]!];
        return [10 - k * y, x, z + dz][i % 3]!;
      });
    near(soup, [...turned(2, 0), ...turned(1, 7)]);
  });

  test('several meshes and parts are joined; points and lines are passed over', () => {
    const soup = readGlb(
      tetrahedronGlb((json) => {
        const [part] = json.meshes[0].primitives;
        json.meshes[0].primitives = [part, { ...part, mode: 0 }, { ...part, mode: 1 }, part];
      }),
    );
    expect([...soup]).toEqual([...SOUP, ...SOUP]);
  });

  const with_ = (change: (json: Loose) => void) => tetrahedronGlb(change);
  const old = tetrahedronGlb();
  new DataView(old.buffer).setUint32(4, 1, true);
  test.each<[string, Uint8Array, RegExp]>([
    ['something else', text('glTF is not all that it takes'), /version/],
    ['version 1', old, /version 1; only 2/],
    ['one cut short', tetrahedronGlb().slice(0, -8), /cut short: its head promises/],
    ['a description that is none', glb([] as never), /not JSON/],
    [
      'a buffer elsewhere',
      with_((j) => (j.buffers[0].uri = 'https://example.org/bay.bin')),
      /outside the file.*nothing is fetched/,
    ],
    [
      'a buffer beside it',
      with_((j) => j.buffers.push({ uri: '../secret.bin', byteLength: 4 })),
      /buffer 1.*\.\.\/secret/,
    ],
    ['a buffer within a text', with_((j) => (j.buffers[0].uri = 'data:;base64,AAAA')), /buffer 0/],
    [
      'Draco',
      with_((j) => (j.extensionsRequired = ['KHR_draco_mesh_compression'])),
      /Draco compression.*without compression/,
    ],
    ['meshopt', with_((j) => (j.extensionsRequired = ['EXT_meshopt_compression'])), /meshopt/],
    ['what nobody knows', with_((j) => (j.extensionsRequired = ['ACME_magic'])), /"ACME_magic"/],
    ['a list of required things that is odd', with_((j) => (j.extensionsRequired = [7])), /"7"/],
    ['positions past the end', with_((j) => (j.accessors[0].count = 5)), /cut short or mislabelled.*72 bytes/],
    ['four billion of them', with_((j) => (j.accessors[0].count = 4e9)), /400000000[0-9] vertices|cut short/],
    ['a view past the end', with_((j) => (j.bufferViews[0].byteLength = 1e9)), /indices|cut short/],
    ['an offset below nothing', with_((j) => (j.bufferViews[0].byteOffset = -4)), /cut short/],
    [
      'a corner that is not there',
      with_((j) => {
        j.accessors[0].count = 3;
      }),
      /names vertex 3; allowed: 0 to 2/,
    ],
    ['sparse', with_((j) => (j.accessors[0].sparse = {})), /sparse/],
    ['positions of two numbers', with_((j) => (j.accessors[0].type = 'VEC2')), /three numbers/],
    ['an odd kind of number', with_((j) => (j.accessors[0].componentType = 5130)), /5130/],
    ['no positions', with_((j) => (j.meshes[0].primitives[0].attributes = {})), /no positions/],
    ['a mesh that is not there', with_((j) => (j.nodes[0].mesh = 4)), /mesh 4/],
    ['a node within itself', with_((j) => (j.nodes = [{ children: [0], mesh: 0 }])), /node 0 hangs on/],
    ['a node twice', with_((j) => (j.nodes = [{ children: [1, 1] }, { mesh: 0 }])), /node 1 hangs on/],
    ['a place that is none', with_((j) => (j.nodes[0].translation = [0, null, 0])), /node 0 stands in no place/],
    ['no scene', with_((j) => (j.scenes = [{ nodes: [] }])), /no triangles/],
    [
      'a mesh hung up a million times over',
      with_((j) => {
        j.nodes = Array.from({ length: 300_000 }, () => ({ mesh: 0 }));
        j.scenes[0].nodes = [...j.nodes.keys()];
        j.meshes[0].primitives = Array.from({ length: 10 }, () => j.meshes[0].primitives[0]);
      }),
      /12000000 triangles, at most 10000000/,
    ],
  ])('refuses %s, saying why', (_, bytes, message) => {
    expect(() => readGlb(bytes)).toThrow(MeshError);
    expect(() => readGlb(bytes)).toThrow(message);
  });

  test('a coordinate that is not a number', () => {
    const bytes = tetrahedronGlb();
    new DataView(bytes.buffer).setFloat32(bytes.length - 72 + 16, Number.POSITIVE_INFINITY, true);
    expect(() => readGlb(bytes)).toThrow(/vertex 2 of 4 has a coordinate that is Infinity/);
  });
});

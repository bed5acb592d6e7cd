/**
 * What the steel mirrors: a small bright room made of soft bands and boxes, filtered once into an environment map.
 * Made here, so that nothing is fetched. Z is up.
 */
import {
  BackSide,
  BoxGeometry,
  BufferAttribute,
  Color,
  Mesh,
  MeshBasicMaterial,
  PMREMGenerator,
  Scene,
  SphereGeometry,
  type Texture,
  type WebGLRenderer,
} from 'three';

/**
 * Brightness by height over the horizon (−1 to 1), the same all round: a dim floor, a dark horizon, one bright band above
 * it and a softer one below. So a tube shows a long highlight and a dark flank whichever way it runs.
 */
const BANDS: readonly (readonly [height: number, brightness: number])[] = [
  [-1, 0.34],
  [-0.62, 0.5],
  [-0.42, 0.85],
  [-0.24, 0.42],
  [-0.04, 0.2],
  [0.18, 0.34],
  [0.36, 1.5],
  [0.6, 2.3],
  [0.74, 1.35],
  [1, 1.0],
];

/** Brighter places in the band, so that turning the view makes the metal play. */
const BOXES: readonly { at: [number, number, number]; size: [number, number]; power: number }[] = [
  { at: [2, 5, 6], size: [5, 2.2], power: 5 },
  { at: [-6, -2, 5], size: [4, 1.6], power: 3.6 },
  { at: [7, -3, 3], size: [1.2, 4], power: 2.6 },
  { at: [-5, 6, 2], size: [1.0, 4], power: 2.4 },
];

function brightness(height: number): number {
  const above = BANDS.findIndex(([h]) => h >= height);
  if (above <= 0) return BANDS[above === 0 ? 0 : BANDS.length - 1]![1];
  const [h0, b0] = BANDS[above - 1]!;
  const [h1, b1] = BANDS[above]!;
  return b0 + ((b1 - b0) * (height - h0)) / (h1 - h0);
}

/** @returns the map, and what frees it */
export function studioMap(renderer: WebGLRenderer): { map: Texture; free(): void } {
  const room = new Scene();
  const owned: { dispose(): void }[] = [];
  const own = <T extends { dispose(): void }>(thing: T): T => {
    owned.push(thing);
    return thing;
  };

  const dome = own(new SphereGeometry(20, 32, 64).rotateX(Math.PI / 2));
  const p = dome.getAttribute('position');
  const shades = new Float32Array(p.count * 3);
  for (let i = 0; i < p.count; i++) {
    shades.fill(brightness(p.getZ(i) / 20), 3 * i, 3 * i + 3);
  }
  dome.setAttribute('color', new BufferAttribute(shades, 3));
  room.add(new Mesh(dome, own(new MeshBasicMaterial({ vertexColors: true, side: BackSide }))));
  const board = own(new BoxGeometry(1, 1, 0.05));
  for (const { at, size, power } of BOXES) {
    const box = new Mesh(board, own(new MeshBasicMaterial({ color: new Color(power, power, power) })));
    box.position.set(...at);
    box.scale.set(size[0], size[1], 1);
    box.up.set(0, 0, 1);
    box.lookAt(0, 0, 0);
    room.add(box);
  }

  const filter = new PMREMGenerator(renderer);
  const target = filter.fromScene(room, 0.02, 0.1, 100, { size: 128 });
  filter.dispose();
  for (const thing of owned) thing.dispose();
  return { map: target.texture, free: () => target.dispose() };
}

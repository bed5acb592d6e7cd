/**
 * What the steel mirrors: a small bright room made of a gradient and soft boxes, filtered once into an environment map.
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

const ZENITH = 1.35;
const HORIZON = 0.62;
const NADIR = 0.3;

/** Place, size and brightness of each soft box; each faces the middle. Long ones give tubes their long soft highlights. */
const BOXES: readonly { at: [number, number, number]; size: [number, number]; power: number }[] = [
  { at: [1, 4, 7], size: [7, 3], power: 3.6 },
  { at: [-6, -3, 5], size: [5, 2], power: 2.4 },
  { at: [7, -2, 2.5], size: [1.6, 5], power: 2.2 },
  { at: [-5.5, 5, 1.5], size: [1.4, 4.5], power: 2.0 },
  { at: [0, -8, 2], size: [6, 1.4], power: 1.6 },
];

/** @returns the map, and what frees it */
export function studioMap(renderer: WebGLRenderer): { map: Texture; free(): void } {
  const room = new Scene();
  const owned: { dispose(): void }[] = [];
  const own = <T extends { dispose(): void }>(thing: T): T => {
    owned.push(thing);
    return thing;
  };

  const dome = own(new SphereGeometry(20, 32, 24));
  const p = dome.getAttribute('position');
  const shades = new Float32Array(p.count * 3);
  for (let i = 0; i < p.count; i++) {
    const h = p.getZ(i) / 20;
    const s = h > 0 ? HORIZON + (ZENITH - HORIZON) * h : HORIZON + (NADIR - HORIZON) * Math.min(1, -h * 1.8);
    shades.fill(s, 3 * i, 3 * i + 3);
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
  const target = filter.fromScene(room, 0.03, 0.1, 100);
  filter.dispose();
  for (const thing of owned) thing.dispose();
  return { map: target.texture, free: () => target.dispose() };
}

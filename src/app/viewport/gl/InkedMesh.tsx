/** A solid with its rim: ink while at rest, wider and in the accent when it is hovered or selected. */
import type { BufferGeometry, Material, ShaderMaterial, WebGLRenderer } from 'three';
import { CutFace } from '../cuts/CutFace';
import type { Emphasis } from '../emphasis';
import type { Palette } from '../palette';
import { measureInk, sharedInk } from './ink';
import { useOwned } from './owned';
import type { Pickable } from './pick';
import { stretchOf } from './surface';

type Props = {
  readonly geometry: BufferGeometry;
  /** How many of the indices are the wall that the rim follows; all of them if absent. */
  readonly outerCount?: number;
  readonly material: Material;
  readonly palette: Palette;
  readonly emphasis: Emphasis;
  readonly pick: Pickable;
  /** Of the face where the view is cut. */
  readonly cutColour: string;
};

const WIDTH: Record<Emphasis, number> = { none: 1.3, hovered: 2.6, selected: 3.4 };

export function InkedMesh({ geometry, outerCount, material, palette, emphasis, pick, cutColour }: Props) {
  const wall = useOwned(
    () => stretchOf(geometry, 0, outerCount ?? geometry.getIndex()?.count ?? geometry.getAttribute('position').count),
    [geometry, outerCount],
  );
  const rim = sharedInk(emphasis === 'none' ? palette.ink : palette.accent, WIDTH[emphasis]);
  return (
    <>
      <mesh geometry={geometry} material={material} userData={{ pick }} />
      <Rim geometry={wall} material={rim} />
      <CutFace geometry={geometry} colour={cutColour} palette={palette} />
    </>
  );
}

export function Rim({ geometry, material }: { readonly geometry: BufferGeometry; readonly material: ShaderMaterial }) {
  return (
    <mesh
      geometry={geometry}
      material={material}
      onBeforeRender={(renderer) => measureInk(renderer as WebGLRenderer, material)}
    />
  );
}

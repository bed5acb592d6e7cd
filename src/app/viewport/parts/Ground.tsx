/** The ground: a grid below everything, 100 mm from line to line, that fades before it ends. */
import { useMemo } from 'react';
import { CircleGeometry, type Vector2 } from 'three';
import type { Ball } from '../camera/fit';
import { gridMaterial } from '../gl/gridMaterial';
import { useOwned } from '../gl/owned';
import type { Palette } from '../palette';

export const groundReach = (around: Ball) => Math.max(900, around.radius * 2.6);

type Props = { readonly around: Ball; readonly z: number; readonly palette: Palette };

export function Ground({ around, z, palette }: Props) {
  const reach = groundReach(around);
  const geometry = useOwned(() => new CircleGeometry(1, 48), []);
  const material = useOwned(() => gridMaterial(palette.grid, palette.gridStrength), [palette]);
  useMemo(() => {
    (material.uniforms.middle!.value as Vector2).set(around.at[0], around.at[1]);
    material.uniforms.reach!.value = reach;
  }, [material, around, reach]);
  return (
    <mesh
      geometry={geometry}
      material={material}
      position={[around.at[0], around.at[1], z]}
      scale={[reach, reach, 1]}
      renderOrder={-1}
    />
  );
}

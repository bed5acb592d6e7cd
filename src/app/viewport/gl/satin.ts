/** The one metal of the scene: satin, mirroring the studio softly. Set back a hair in depth so that lines on it win. */
import { MeshStandardMaterial } from 'three';
import type { Theme } from '../../theme';
import { sharedMaterials } from './sharedMaterials';

export function satin(colour: string, roughness = 0.3, metalness = 0.96): MeshStandardMaterial {
  return new MeshStandardMaterial({
    color: colour,
    roughness,
    metalness,
    vertexColors: true,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  });
}

/** What is not polished: the head's casting, a gasket. Without vertex colours. */
export function matt(colour: string, roughness = 0.75, metalness = 0.15): MeshStandardMaterial {
  const material = satin(colour, roughness, metalness);
  material.vertexColors = false;
  return material;
}

/** What is meant among its like, in the accent, drawn over it. */
export const litSteel = sharedMaterials(
  (colour: string, theme: Theme) =>
    new MeshStandardMaterial({
      color: colour,
      metalness: 0.7,
      roughness: 0.35,
      emissive: colour,
      emissiveIntensity: theme === 'light' ? 0.3 : 0.08,
    }),
);

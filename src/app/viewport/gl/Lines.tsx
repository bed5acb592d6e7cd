/** Line segments of a steady width in CSS pixels, as on a drawing: welds, edges, dimensions. */
import { useState } from 'react';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';
import { useOwned } from './owned';
import { sharedMaterials } from './sharedMaterials';

type Props = {
  /** Pairs of points, three numbers each. */
  readonly pairs: ArrayLike<number>;
  readonly colour: string;
  readonly width: number;
  readonly opacity?: number;
  /** Length of dash and gap, mm; absent: unbroken. */
  readonly dash?: number;
  /** Drawn over everything, never hidden. */
  readonly onTop?: boolean;
};

export function Lines({ pairs, colour, width, opacity = 1, dash = 0, onTop = false }: Props) {
  const geometry = useOwned(() => {
    const made = new LineSegmentsGeometry();
    made.setPositions(pairs instanceof Float32Array ? pairs : Float32Array.from(pairs));
    if (dash > 0) new LineSegments2(made).computeLineDistances();
    return made;
  }, [pairs, dash > 0]);
  // One object throughout, so that new points need no other place in the scene.
  const [line] = useState(() => Object.assign(new LineSegments2(), { raycast() {} }));
  const material = lineMaterial(colour, width, opacity, dash, onTop);
  return pairs.length > 0 ? (
    <primitive object={line} geometry={geometry} material={material} renderOrder={onTop ? 10 : 1} dispose={null} />
  ) : null;
}

/** Lines that look alike share a pen: the graphics card is not told anew how for each of them. There are a few dozen in all. */
const lineMaterial = sharedMaterials(
  (colour: string, width: number, opacity: number, dash: number, onTop: boolean) =>
    new LineMaterial({
      color: colour,
      linewidth: width,
      opacity,
      transparent: opacity < 1,
      depthWrite: opacity === 1,
      dashed: dash > 0,
      dashSize: dash || 1,
      gapSize: dash || 1,
      depthTest: !onTop,
    }),
);

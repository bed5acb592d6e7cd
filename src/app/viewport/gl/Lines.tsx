/** Line segments of a steady width in CSS pixels, as on a drawing: welds, edges, dimensions. */
import { useEffect } from 'react';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';
import { useOwned } from './owned';

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
    return made;
  }, [pairs]);
  const material = useOwned(
    () =>
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
    [colour, width, opacity, dash, onTop],
  );
  const line = useOwned(() => {
    const made = Object.assign(new LineSegments2(geometry, material), { dispose() {} });
    made.renderOrder = onTop ? 10 : 1;
    if (dash > 0) made.computeLineDistances();
    return made;
  }, [geometry, material]);
  useEffect(() => {
    line.raycast = () => {};
  }, [line]);
  return pairs.length > 0 ? <primitive object={line} dispose={null} /> : null;
}

/** A plate by its outline and holes, for what is drawn and not cut: quick pictures of flanges, gaskets, the head's casting. mm. */
import { useMemo } from 'react';
import { ExtrudeGeometry, Path, Shape, Vector2 } from 'three';
import type { Ref } from '../../session';
import { CutFace } from '../cuts/CutFace';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { matt } from '../gl/satin';
import { sharpEdges } from '../gl/sharpEdges';
import type { Point2 } from '../model/outline';
import type { Palette } from '../palette';

/** A slight broken edge catches the light. */
const CHAMFER = 0.7;

type SlabProps = {
  readonly outline: readonly Point2[];
  readonly holes: readonly (readonly Point2[])[];
  /** Height of the outer face; the slab lies below it. */
  readonly from: number;
  readonly thickness: number;
  readonly colour: string;
  readonly palette: Palette;
  readonly polished?: boolean;
  readonly edge?: string;
  readonly edgeWidth?: number;
  readonly pick?: Ref;
};

export function Slab({
  outline,
  holes,
  from,
  thickness,
  colour,
  palette,
  polished = false,
  edge,
  edgeWidth = 1,
  pick,
}: SlabProps) {
  const geometry = useOwned(() => {
    const shape = new Shape(outline.map(([x, y]) => new Vector2(x, y)));
    for (const hole of holes) shape.holes.push(new Path([...hole].reverse().map(([x, y]) => new Vector2(x, y))));
    const chamfer = polished ? Math.min(CHAMFER, thickness / 4) : 0;
    const made = new ExtrudeGeometry(shape, {
      depth: thickness - 2 * chamfer,
      bevelEnabled: chamfer > 0,
      bevelSize: chamfer,
      bevelOffset: -chamfer,
      bevelThickness: chamfer,
      bevelSegments: 1,
    });
    made.translate(0, 0, from - thickness + chamfer);
    return made;
  }, [outline, holes, from, thickness, polished]);
  const edges = useMemo(() => sharpEdges(geometry, 35), [geometry]);
  const material = useOwned(() => (polished ? matt(colour, 0.42, 0.65) : matt(colour)), [colour, polished]);
  const pickable = useMemo((): Pickable | undefined => (pick ? { ref: () => pick } : undefined), [pick]);
  return (
    <>
      <mesh geometry={geometry} material={material} userData={pickable ? { pick: pickable } : {}} />
      <CutFace geometry={geometry} colour={colour} palette={palette} />
      {edge && <Lines pairs={edges} colour={edge} width={edgeWidth} opacity={0.7} />}
    </>
  );
}

/**
 * How something that must be kept clear of is drawn: glassy, its edges faint, so that it recedes until it is asked about. The
 * one selected shows its clearance as a second skin around it.
 */
import { useMemo } from 'react';
import {
  BackSide,
  type BufferGeometry,
  DoubleSide,
  type Intersection,
  type Material,
  type Raycaster,
  type Side,
} from 'three';
import type { Surrounding } from '../../../../shared/design/types';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../emphasis';
import { ghostMaterial } from '../gl/ghost';
import { Lines } from '../gl/Lines';
import type { Pickable } from '../gl/pick';
import { sharpEdges } from '../gl/sharpEdges';
import type { Palette } from '../palette';

export type GhostProps<T extends Surrounding = Surrounding> = {
  readonly surrounding: T;
  readonly palette: Palette;
  /** 1 for a few; less where many overlap, so that the sum stays light. */
  readonly strength: number;
};

type GlassProps = GhostProps & {
  readonly geometry: BufferGeometry;
  readonly halo: BufferGeometry | null;
  /** Round all over: it has a rim and no edges. */
  readonly smooth?: boolean;
  /** Round, and with edges all the same: a cylinder's rims. */
  readonly edged?: boolean;
  /** Has no far walls: both its sides are tinted. */
  readonly flat?: boolean;
  /** Has no inside. */
  readonly open?: boolean;
  /** In place of the usual ones, which need normals: made for a colour and two opacities. */
  readonly paint?: (colour: string, face: number, rim: number, side: Side) => Material;
  /** In place of testing every triangle. */
  readonly raycast?: (raycaster: Raycaster, hits: Intersection[]) => void;
};

export function Glass({
  surrounding,
  palette,
  strength,
  geometry,
  halo,
  smooth = false,
  edged = !smooth,
  flat = false,
  open = false,
  paint = ghostMaterial,
  raycast,
}: GlassProps) {
  const own = useMemo((): Ref => ({ kind: 'surrounding', id: surrounding.id }), [surrounding.id]);
  const emphasis = useSession((s) => emphasisOf(own, s.selection, s.hovered));
  const lit = emphasis !== 'none';
  // Hovering lights the edges alone: a floor or a wall fills the picture, and the pointer is nearly always over one.
  const filled = emphasis === 'selected' || (smooth && lit);
  const colour = filled ? palette.accent : palette.ghost;
  const k = smooth && lit ? 1.6 : filled ? 1 : strength;
  // Faces toward the eye would lie over the header: only the far walls of a body are tinted, both of something thin.
  const material = smooth
    ? paint(colour, palette.ghostFace * k, Math.min(0.8, palette.ghostRim * 3.2 * k), DoubleSide)
    : flat
      ? // It may lie before all of the picture.
        paint(colour, palette.ghostFace * 0.6 * k, palette.ghostRim * 0.5 * k, DoubleSide)
      : open
        ? // A scan is a skin: which way its triangles face says nothing, and its slopes are all there is to see.
          paint(colour, palette.ghostFace * 1.2 * k, Math.min(0.6, palette.ghostRim * 2.6 * k), DoubleSide)
        : paint(colour, palette.ghostFace * 1.6 * k, palette.ghostRim * k, BackSide);
  const skin = ghostMaterial(palette.accent, 0.012, 0.4, DoubleSide);
  const edges = useMemo(() => (edged ? sharpEdges(geometry, 28) : []), [geometry, edged]);
  const pick = useMemo((): Pickable => ({ ref: () => own, glass: true }), [own]);
  return (
    <group>
      <mesh geometry={geometry} material={material} renderOrder={2} userData={{ pick }} {...(raycast && { raycast })} />
      <Lines
        pairs={edges}
        colour={lit ? palette.accent : palette.ghost}
        width={lit ? 1.6 : 1}
        opacity={lit ? 0.95 : palette.ghostEdge * Math.max(strength, 0.55)}
      />
      {emphasis === 'selected' && halo && <mesh geometry={halo} material={skin} renderOrder={3} />}
    </group>
  );
}

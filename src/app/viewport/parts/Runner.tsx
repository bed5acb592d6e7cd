/**
 * One runner: a satin tube in its temper colour with ink at its edges and a line at each weld. Rebuilt only when its own
 * points, radii or tube change, not when a neighbour moves.
 */
import { useThree } from '@react-three/fiber';
import { memo, useLayoutEffect, useMemo } from 'react';
import { BufferAttribute, type BufferGeometry } from 'three';
import { type ResolvedRunner, trimmedLine } from '../../../../geometry';
import type { GapProfile } from '../../../../geometry/gaps/report';
import type { Vec3 } from '../../../../shared/vec3';
import { tintInto, useTint } from '../../room/tint';
import { type Ref, useSession } from '../../session';
import { emphasisOf, sameElement } from '../emphasis';
import { InkedMesh, Rim } from '../gl/InkedMesh';
import { sharedInk } from '../gl/ink';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { litSteel, satin } from '../gl/satin';
import { stretchOf, surface } from '../gl/surface';
import { type TubeMesh, tubeMesh } from '../model/tubeMesh';
import { type Palette, tempered } from '../palette';

type Props = {
  readonly runner: ResolvedRunner;
  readonly paint: string;
  readonly palette: Palette;
  /** How much farther in (positive) or out (negative) than its centerline's start the tube begins, mm. */
  readonly trim: number;
  /** Where it stands while the header is shown taken apart. */
  readonly away: Vec3 | undefined;
};

export const Runner = memo(
  function Runner({ runner, paint, palette, trim, away }: Props) {
    const { id } = runner.runner;
    const own = useMemo((): Ref => ({ kind: 'runner', id }), [id]);
    const group = runner.runner.group;
    const emphasis = useSession((s) => {
      const alone = emphasisOf(own, s.selection, s.hovered);
      if (alone !== 'none' || group === undefined) return alone;
      return emphasisOf({ kind: 'group', id: group }, s.selection, s.hovered);
    });
    const hovered = useSession((s) => (sameElement(s.hovered, own) ? s.hovered : null));
    const selection = useSession((s) => s.selection);

    const line = useMemo(() => trimmedLine(runner, trim)!, [runner, trim]);
    const tint = useTint(id);
    const tinted = tint !== null;
    const mesh = useMemo(
      () => tubeMesh(line, runner.tubeRadius, runner.tube.wall, runner.start.up, tinted ? TINT_STEP : undefined),
      [line, runner.tubeRadius, runner.tube.wall, runner.start.up, tinted],
    );
    const geometry = useOwned(() => surface(mesh), [mesh]);
    useTinted(geometry, mesh, tint, trim, palette);
    // Between metal and paint: a colour that is to be read must not be all gleam.
    const steel = useOwned(
      () => (tinted ? satin('#ffffff', 0.5, 0.35) : satin(tempered(paint, palette))),
      [paint, palette, tinted],
    );
    const pick = useMemo((): Pickable => {
      const ref = (corner: number): Ref => {
        const part = mesh.parts.find((p) => corner >= p.first && corner < p.first + p.count);
        return part ? ({ ...own, [part.kind]: part.index } as Ref) : own;
      };
      return { ref };
    }, [mesh, own]);
    const parts = useMemo(() => {
      const lit = [hovered, ...selection.filter((ref) => sameElement(ref, own))];
      return mesh.parts.filter((p) =>
        lit.some((r) => r?.kind === 'runner' && (p.kind === 'bend' ? r.bend === p.index : r.straight === p.index)),
      );
    }, [hovered, selection, own, mesh]);
    return (
      <group position={away ?? STAYS}>
        <InkedMesh
          geometry={geometry}
          outerCount={mesh.outerCount}
          material={steel}
          palette={palette}
          emphasis={emphasis}
          pick={pick}
          cutColour={paint}
        />
        <Lines pairs={mesh.seams} colour={palette.ink} width={1.1} opacity={0.6} />
        {parts.map((part) => (
          <LitPart
            key={`${part.kind} ${part.index}`}
            geometry={geometry}
            first={part.first}
            count={part.count}
            palette={palette}
          />
        ))}
      </group>
    );
  },
  (a, b) =>
    a.paint === b.paint &&
    a.trim === b.trim &&
    a.away === b.away &&
    a.palette === b.palette &&
    a.runner.runner.points === b.runner.runner.points &&
    a.runner.runner.radii === b.runner.runner.radii &&
    a.runner.runner.id === b.runner.runner.id &&
    a.runner.runner.group === b.runner.runner.group &&
    a.runner.tube === b.runner.tube &&
    a.runner.tooling.centerlineRadius === b.runner.tooling.centerlineRadius,
);

/** Rings of a tube whose colour changes along it are no farther apart than this, mm. */
const TINT_STEP = 6;

/** Writes the colours of the room into the tube's own, or leaves it its greys. Nothing is built anew while only gaps change. */
function useTinted(geometry: BufferGeometry, mesh: TubeMesh, tint: GapProfile | null, trim: number, palette: Palette) {
  const invalidate = useThree((s) => s.invalidate);
  const tinted = tint !== null;
  // One for each mesh that is coloured, whatever the colours.
  const own = useMemo(
    () => (tinted ? new BufferAttribute(new Float32Array(mesh.shades.length), 3) : null),
    [mesh, tinted],
  );
  useLayoutEffect(() => {
    if (!own || !tint) return;
    tintInto(own.array as Float32Array, mesh, tint, -trim, palette.theme);
    own.needsUpdate = true;
    if (geometry.getAttribute('color') !== own) geometry.setAttribute('color', own);
    invalidate();
  }, [geometry, mesh, own, tint, trim, palette, invalidate]);
}

const STAYS: Vec3 = [0, 0, 0];

type LitProps = {
  readonly geometry: BufferGeometry;
  readonly first: number;
  readonly count: number;
  readonly palette: Palette;
};

/** The bend or straight that is meant, in the accent. */
function LitPart({ geometry, first, count, palette }: LitProps) {
  const part = useOwned(() => stretchOf(geometry, first, count), [geometry, first, count]);
  return (
    <>
      <mesh geometry={part} material={litSteel(palette.accent, palette.theme)} renderOrder={1} />
      <Rim geometry={part} material={sharedInk(palette.accent, 4)} />
    </>
  );
}

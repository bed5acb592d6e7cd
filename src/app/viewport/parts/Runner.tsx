/**
 * One runner: a satin tube in its temper colour with ink at its edges and a line at each weld. Rebuilt only when its own
 * points, radii or tube change, not when a neighbour moves.
 */
import { memo, useMemo } from 'react';
import type { BufferGeometry } from 'three';
import { type ResolvedRunner, trimmedLine } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { type Ref, useSession } from '../../session';
import { emphasisOf, sameElement } from '../emphasis';
import { InkedMesh, Rim } from '../gl/InkedMesh';
import { sharedInk } from '../gl/ink';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { litSteel, satin } from '../gl/satin';
import { stretchOf, surface } from '../gl/surface';
import { tubeMesh } from '../model/tubeMesh';
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
    const mesh = useMemo(
      () => tubeMesh(line, runner.tubeRadius, runner.tube.wall, runner.start.up),
      [line, runner.tubeRadius, runner.tube.wall, runner.start.up],
    );
    const geometry = useOwned(() => surface(mesh), [mesh]);
    const steel = useOwned(() => satin(tempered(paint, palette)), [paint, palette]);
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

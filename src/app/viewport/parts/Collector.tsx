/**
 * A collector's quick picture, drawn while it is changed: plain satin steel, so that the runners' colours stay the runners'.
 * Its real parts take its place once they are made.
 */
import { memo, useMemo } from 'react';
import type { ResolvedMerge } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../emphasis';
import { InkedMesh } from '../gl/InkedMesh';
import { Lines } from '../gl/Lines';
import { useOwned } from '../gl/owned';
import type { Pickable } from '../gl/pick';
import { satin } from '../gl/satin';
import { surface } from '../gl/surface';
import { collectorMesh } from '../model/collectorMesh';
import type { Palette } from '../palette';

type Props = {
  readonly merge: ResolvedMerge;
  readonly palette: Palette;
  /** Where it stands while the header is shown taken apart. */
  readonly away: Vec3 | undefined;
};

export const Collector = memo(
  function Collector({ merge, palette, away }: Props) {
    const { id } = merge.merge;
    const own = useMemo((): Ref => ({ kind: 'merge', id }), [id]);
    const emphasis = useSession((s) => emphasisOf(own, s.selection, s.hovered));
    const mesh = useMemo(() => collectorMesh(merge), [merge]);
    const geometry = useOwned(() => surface(mesh), [mesh]);
    const steel = useOwned(() => satin(palette.steel, 0.4), [palette]);
    const pick = useMemo((): Pickable => ({ ref: () => own }), [own]);
    return (
      <group position={away ?? STAYS}>
        <InkedMesh
          geometry={geometry}
          outerCount={mesh.outerCount}
          material={steel}
          palette={palette}
          emphasis={emphasis}
          pick={pick}
          cutColour={palette.steel}
        />
        <Lines pairs={mesh.seams} colour={palette.ink} width={1.1} opacity={0.6} />
      </group>
    );
  },
  (a, b) =>
    a.palette === b.palette &&
    a.away === b.away &&
    a.merge.merge === b.merge.merge &&
    a.merge.pitch === b.merge.pitch &&
    a.merge.inletOutsideDiameter === b.merge.inletOutsideDiameter &&
    a.merge.wall === b.merge.wall,
);

const STAYS: Vec3 = [0, 0, 0];

/** Service points: a hexagon or disc where the tool or the hand takes hold, and an arrow the way it comes off. */
import { memo, useMemo } from 'react';
import { addScaled, anySquareTo, cross, unit } from '../../../../geometry';
import type { ServicePoint } from '../../../../shared/design/types';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../../viewport/emphasis';
import { InkedMesh } from '../../viewport/gl/InkedMesh';
import { Lines } from '../../viewport/gl/Lines';
import { useOwned } from '../../viewport/gl/owned';
import type { Pickable } from '../../viewport/gl/pick';
import { matt } from '../../viewport/gl/satin';
import type { Palette } from '../../viewport/palette';
import { barGeometry } from './bar';

type Props = { readonly points: readonly ServicePoint[] | undefined; readonly palette: Palette };

export function ServiceMarks({ points = [], palette }: Props) {
  return points.map((point) => <Mark key={point.id} point={point} palette={palette} />);
}

/** Drawn so wide where the design does not say, and so high, mm: to be seen, not measured. */
const WIDE: Readonly<Record<ServicePoint['kind'], number>> = {
  'spark-plug': 16,
  'oil-filter': 76,
  starter: 13,
  dipstick: 12,
  bolt: 13,
};
const HIGH = 8;
const ARROW = 34;
const BARB = 6;

const Mark = memo(function Mark({ point, palette }: { readonly point: ServicePoint; readonly palette: Palette }) {
  const { id, kind, position, direction } = point;
  const ref = useMemo((): Ref => ({ kind: 'service', id }), [id]);
  const emphasis = useSession((s) => emphasisOf(ref, s.selection, s.hovered));
  const wide = (kind === 'oil-filter' || kind === 'dipstick' ? point.diameter : point.acrossFlats) ?? WIDE[kind];
  const round = kind === 'oil-filter' || kind === 'dipstick';
  const way = useMemo(() => unit(direction), [direction]);
  const geometry = useOwned(
    () =>
      barGeometry(
        { shape: 'cylinder', a: position, b: addScaled(position, way, HIGH), radius: (round ? 0.5 : 0.577) * wide },
        round ? 28 : 6,
      ),
    [position, way, wide, round],
  );
  const steel = useOwned(() => matt(palette.steel, 0.45, 0.8), [palette]);
  const pick = useMemo((): Pickable => ({ ref: () => ref }), [ref]);
  const arrow = useMemo(() => {
    const from = addScaled(position, way, HIGH);
    const tip = addScaled(from, way, ARROW);
    const a = anySquareTo(way);
    const b = cross(way, a);
    const barbs = [a, b].flatMap((side) =>
      [-BARB, BARB].flatMap((k) => [...tip, ...addScaled(addScaled(tip, way, -2 * BARB), side, k)]),
    );
    return [...from, ...tip, ...barbs];
  }, [position, way]);
  return (
    <>
      <InkedMesh
        geometry={geometry}
        material={steel}
        palette={palette}
        emphasis={emphasis}
        pick={pick}
        cutColour={palette.steel}
      />
      <Lines pairs={arrow} colour={emphasis === 'none' ? palette.ghost : palette.accent} width={1.6} />
    </>
  );
});

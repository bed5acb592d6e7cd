/** Heat wrap on runners: on each a matt sleeve over the stretches that are wrapped, a little of the tube's own colour in it. */
import { memo, useMemo } from 'react';
import type { Header, ResolvedRunner } from '../../../../geometry';
import type { Paint } from '../../colours';
import { mix } from '../../contrast';
import { type Ref, useSession } from '../../session';
import { emphasisOf } from '../../viewport/emphasis';
import { InkedMesh } from '../../viewport/gl/InkedMesh';
import { useOwned } from '../../viewport/gl/owned';
import type { Pickable } from '../../viewport/gl/pick';
import { matt } from '../../viewport/gl/satin';
import type { Palette } from '../../viewport/palette';
import { sleeveGeometry, wrappedOf } from './sleeveMesh';

type Props = {
  readonly runner: ResolvedRunner;
  readonly thickness: number;
  readonly paint: string;
  readonly palette: Palette;
};

/** Of woven glass or basalt, between its own grey and the tube's colour. */
const CLOTH = { light: '#a89f90', dark: '#6a655d' } as const;

type AllProps = {
  readonly header: Header;
  readonly paints: ReadonlyMap<string, Paint>;
  readonly palette: Palette;
  /** Whether a runner, by its key, has its sleeve here. */
  readonly stands: (key: string) => boolean;
};

export function Sleeves({ header, paints, palette, stands }: AllProps) {
  const { wrap } = header.design;
  if (!wrap) return null;
  return header.runners
    .filter(({ runner, centerline }) => centerline && stands(`runner/${runner.id}`))
    .map((runner) => (
      <Sleeve
        key={runner.runner.id}
        runner={runner}
        thickness={wrap.thickness * wrap.layers}
        paint={paints.get(runner.runner.id)!.colour}
        palette={palette}
      />
    ));
}

const Sleeve = memo(
  function Sleeve({ runner, thickness, paint, palette }: Props) {
    const { centerline, tubeRadius } = runner;
    const { id, wrapped } = runner.runner;
    const ref = useMemo((): Ref => ({ kind: 'runner', id }), [id]);
    const emphasis = useSession((s) => emphasisOf(ref, s.selection, s.hovered));
    const geometry = useOwned(
      () => sleeveGeometry(centerline!, tubeRadius, tubeRadius + thickness, wrappedOf(centerline!, wrapped)),
      [centerline, tubeRadius, thickness, wrapped],
    );
    const colour = mix(paint, CLOTH[palette.theme], 0.3);
    const cloth = useOwned(() => matt(colour, 0.95, 0), [colour]);
    const pick = useMemo((): Pickable => ({ ref: () => ref }), [ref]);
    return (
      <InkedMesh
        geometry={geometry}
        material={cloth}
        palette={palette}
        emphasis={emphasis}
        pick={pick}
        cutColour={colour}
      />
    );
  },
  (a, b) =>
    a.runner.centerline === b.runner.centerline &&
    a.runner.runner.wrapped === b.runner.runner.wrapped &&
    a.runner.tubeRadius === b.runner.tubeRadius &&
    a.thickness === b.thickness &&
    a.paint === b.paint &&
    a.palette === b.palette,
);

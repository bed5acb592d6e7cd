/** The tool at the place that is looked at in the list: see-through, in the accent where it has room, else as what fails. */
import { useMemo } from 'react';
import { DoubleSide } from 'three';
import { mergeGeometries } from 'three/addons/utils/BufferGeometryUtils.js';
import type { ToolTry } from '../../../../geometry';
import { ghostMaterial } from '../../viewport/gl/ghost';
import { Lines } from '../../viewport/gl/Lines';
import { useOwned } from '../../viewport/gl/owned';
import { sharpEdges } from '../../viewport/gl/sharpEdges';
import type { Palette } from '../../viewport/palette';
import { useAnswers } from '../answers';
import { useRoomLook } from '../look';
import { barGeometry } from './bar';

type Props = { readonly isWrapped: boolean; readonly palette: Palette };

export function ToolShown({ isWrapped, palette }: Props) {
  const id = useRoomLook((s) => s.entry);
  const tool = useRoomLook((s) => s.tool);
  const entry = useAnswers((s) => (id === null ? undefined : s.access.value?.entries.find((e) => e.id === id)));
  const shown = entry && (tool === null ? entry.best : (entry.tries[tool] ?? entry.best));
  if (!shown || shown.solids.length === 0) return null;
  const fits = isWrapped ? shown.wrapped : shown.bare;
  return <Solids of={shown} colour={fits ? palette.accent : palette.fail} />;
}

/** Looked through from any side; every edge shows. */
export function Solids({ of, colour }: { readonly of: Pick<ToolTry, 'solids'>; readonly colour: string }) {
  const geometry = useOwned(() => mergeGeometries(of.solids.map((solid) => barGeometry(solid))), [of]);
  const edges = useMemo(() => sharpEdges(geometry, 30), [geometry]);
  return (
    <>
      <mesh geometry={geometry} material={ghostMaterial(colour, 0.2, 0.85, DoubleSide)} renderOrder={4} />
      <Lines pairs={edges} colour={colour} width={1.4} opacity={0.9} />
    </>
  );
}

/** The one part that is pointed at in the list, in the accent, over its neighbours' steel. */
import { useMemo } from 'react';
import type { ShownPart } from '../../made/shape';
import { useMade } from '../../made/state';
import { Rim } from '../gl/InkedMesh';
import { sharedInk } from '../gl/ink';
import { useOwned } from '../gl/owned';
import { litSteel } from '../gl/satin';
import { surface } from '../gl/surface';
import { joinShapes } from '../model/joinShapes';
import type { Palette } from '../palette';

type Props = { readonly parts: readonly ShownPart[]; readonly palette: Palette };

export function PointedPart({ parts, palette }: Props) {
  const part = useMade(({ pointed }) => (pointed === null ? undefined : parts.find(({ id }) => id === pointed)));
  return part ? <Lit part={part} palette={palette} /> : null;
}

function Lit({ part, palette }: { readonly part: ShownPart; readonly palette: Palette }) {
  const joined = useMemo(() => joinShapes([part]), [part]);
  const geometry = useOwned(() => surface(joined), [joined]);
  return (
    <>
      <mesh geometry={geometry} material={litSteel(palette.accent, palette.theme)} renderOrder={1} />
      <Rim geometry={geometry} material={sharedInk(palette.accent, 3.4)} />
    </>
  );
}

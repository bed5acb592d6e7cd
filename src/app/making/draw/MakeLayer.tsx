/** Welds within tubes as rings, drawn over the picture while the Make leaf lies on top; the piece that is meant between two of its own. */

import { Lines } from '../../viewport/gl/Lines';
import type { Palette } from '../../viewport/palette';
import type { MakeShown } from './shown';

export function MakeLayer({ shown, palette }: { readonly shown: MakeShown; readonly palette: Palette }) {
  return (
    <>
      <Lines pairs={shown.welds} colour={palette.dimension} width={3} />
      <Lines pairs={shown.ends} colour={palette.accent} width={4.5} />
    </>
  );
}

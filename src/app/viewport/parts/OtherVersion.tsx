/** The runners of another version as thin dashed lines along their middles, over the design as it stands. */
import { useMemo } from 'react';
import { resolveHeader, sampleCenterline } from '../../../../geometry';
import { useDocument } from '../../document';
import { useCompare } from '../../versions/compareState';
import { Lines } from '../gl/Lines';
import type { Palette } from '../palette';

/** How far a chord may lie off its bend, mm: below a pixel at any distance that shows a runner whole. */
const SAGITTA = 0.5;
const WIDTH = 2;
const DASH = 8;

export function OtherVersion({ palette }: { readonly palette: Palette }) {
  const drawn = useCompare((s) => s.drawn);
  const id = useDocument((s) => s.id);
  const design = drawn && drawn.of === id ? drawn.design : null;
  const pairs = useMemo(() => {
    if (!design) return [];
    return resolveHeader(design).runners.flatMap(({ centerline }) => {
      if (!centerline) return [];
      const points = sampleCenterline(centerline, SAGITTA).map((s) => s.position);
      return points.slice(1).flatMap((point, i) => [...points[i]!, ...point]);
    });
  }, [design]);
  return <Lines pairs={pairs} colour={palette.dimension} width={WIDTH} dash={DASH} onTop />;
}

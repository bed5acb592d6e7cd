/**
 * The gasket behind a flange: as the flange's plates are cut, once they are made; until then as its quick picture. Its holes
 * are the ports' openings alone, as it lies hidden.
 */
import { useMemo } from 'react';
import { Matrix4, Vector3 } from 'three';
import { type PlatePlan, partFrame, sampleLoop } from '../../../../geometry';
import type { Point2 } from '../model/outline';
import type { Palette } from '../palette';
import { Slab } from './Slab';

type Props = { readonly plan: PlatePlan; readonly thickness: number; readonly palette: Palette };

/** How far a drawn chord may stray from its arc, mm. */
const SAGITTA = 0.1;

export function Gasket({ plan, thickness, palette }: Props) {
  const outline = useMemo((): readonly Point2[] => sampleLoop(plan.outline, SAGITTA), [plan]);
  const holes = useMemo(() => plan.openings.map(({ loop }) => sampleLoop(loop, SAGITTA)), [plan]);
  const matrix = useMemo(() => {
    const [x, y, z, o] = partFrame(plan.pose).map((v) => new Vector3(...v)) as [Vector3, Vector3, Vector3, Vector3];
    return new Matrix4().makeBasis(x, y, z).setPosition(o);
  }, [plan]);
  return (
    <group matrix={matrix} matrixAutoUpdate={false}>
      <Slab
        outline={outline}
        holes={holes}
        from={-plan.thickness}
        thickness={thickness}
        colour={palette.gasket}
        palette={palette}
      />
    </group>
  );
}

/**
 * `collectors/ID plate.dxf` and `collectors/ID joint.dxf`, each in R2000 and R12: what of a collector is cut from plate, on the
 * layers of a flange. Seen along the flow's way back, from the outlet; mm.
 */
import type { HeaderPart } from '../../geometry';
import type { NamedFile } from '../formats/zip/zip';
import { plateDxf, plateDxfNames } from './plateDxf';
import { partFile } from './solids';

export const flatParts = (parts: readonly HeaderPart[]): NamedFile[] =>
  parts.flatMap((part) => {
    const { flat } = part;
    if (!flat) return [];
    const curves = [
      { layer: 'OUTLINE', loop: flat.outline },
      ...flat.ports.map((loop) => ({ layer: 'PORTS', loop })),
      ...flat.holes.map((loop) => ({ layer: 'HOLES', loop })),
    ];
    return plateDxfNames(partFile(part).replace(/\.stl$/, '')).map(({ name, version }) => ({
      name,
      bytes: plateDxf(curves, version),
    }));
  });

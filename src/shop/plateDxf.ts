/** What is cut from plate as drawings for the laser, one in each dialect: `STEM.dxf` (R2000) and `STEM-r12.dxf`. mm. */
import { DXF_VERSIONS, type DxfCurve, type DxfLayer, type DxfVersion, writeDxf } from '../formats/dxf/write';

/** Black, blue, red, green. */
const LAYERS: readonly DxfLayer[] = [
  { name: 'OUTLINE', colour: 7 },
  { name: 'PORTS', colour: 5 },
  { name: 'HOLES', colour: 1 },
  { name: 'ETCH', colour: 3 },
];

export const plateDxfNames = (stem: string): { name: string; version: DxfVersion }[] =>
  DXF_VERSIONS.map((version) => ({ name: `${stem}${version === 'R12' ? '-r12' : ''}.dxf`, version }));

export const plateDxf = (curves: readonly DxfCurve[], version: DxfVersion): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(writeDxf({ layers: LAYERS, curves }, version));

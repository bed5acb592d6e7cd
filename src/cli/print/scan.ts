/** What `scan` did, for people. */
import type { PosedByPoints } from '../../../geometry';
import type { LengthUnit, MeshSurrounding } from '../../../shared/design/types';
import type { MeshNotes } from '../../formats/mesh/notes';

export type Scanned = {
  readonly file: string;
  readonly unit: LengthUnit;
  readonly notes: MeshNotes;
  /** Triangles that count, once cropped and thinned. */
  readonly counted: number;
  /** Its box in the design, mm. */
  readonly placed: readonly number[];
  readonly surrounding: MeshSurrounding;
  /** Whether its clearance is what its kind proposes. */
  readonly proposed: boolean;
  readonly posed: PosedByPoints | null;
  /** Where the mesh was copied to. */
  readonly copied: string | null;
  readonly output: string;
};

export function printScan(scanned: Scanned, remarks: readonly string[]): string {
  const { file, unit, notes, counted, placed, surrounding: own, proposed, posed, copied, output } = scanned;
  const corner = (from: number): string =>
    placed
      .slice(from, from + 3)
      .map((x) => x.toFixed(1))
      .join(', ');
  const lines = [
    `${file}: ${notes.kind}, ${notes.triangles} triangle${notes.triangles === 1 ? '' : 's'}, read in ${unit === 'in' ? 'inches' : unit}`,
    `  ${notes.size}`,
    ...(notes.kind === 'GLB' && unit !== 'm'
      ? [
          `  GLB is in metres by its standard, and was read in ${unit === 'in' ? 'inches' : unit} as asked: look whether its size is right`,
        ]
      : []),
    ...remarks.map((remark) => `  ${remark}`),
  ];
  if (counted !== notes.triangles) lines.push(`  ${counted} triangles count, once cropped or thinned`);
  if (own.thin !== undefined) lines.push(`  thinned: gaps to it may be off by ${own.thin} mm`);
  lines.push(`It stands from ${corner(0)} to ${corner(3)} mm as "${own.id}"`);
  if (own.clearance !== undefined)
    lines.push(
      proposed
        ? `Clearance ${own.clearance} mm, as proposed for ${own.kind}: common practice, no source`
        : `Clearance ${own.clearance} mm`,
    );
  else if (own.kind !== undefined)
    lines.push(`Clearance none: tubes may touch it; none is proposed for "${own.kind}", give --clearance`);
  else lines.push('Clearance none: tubes may touch it; give --clearance or --kind');
  if (posed) {
    lines.push(`Its points are ${posed.residuals.map((r) => r.toFixed(2)).join(', ')} mm off their places`);
    if (posed.warning) lines.push(`  ${posed.warning}`);
  }
  if (copied) lines.push(`Copied to ${copied}, beside the design`);
  lines.push(`Written to ${output}`);
  return `${lines.join('\n')}\n`;
}

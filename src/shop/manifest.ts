/**
 * `manifest.json`: what is in the folder, so that a copy can be checked, and what is not and why, so that nobody takes a
 * folder for complete that is not. No date and no machine in it: the same design gives the same bytes.
 */
import type { CheckReport, Header, PartRemark } from '../../geometry';
import { VERSION } from '../../shared/version';
import { sha256 } from '../formats/hash/sha256';
import type { NamedFile } from '../formats/zip/zip';
import type { NotMade } from './part';
import { START_RULE } from './tubeStart';

export const MANIFEST = 'manifest.json';
export const MANIFEST_FORMAT = 'evenrun-shop-folder';

export type Manifest = {
  readonly format: typeof MANIFEST_FORMAT;
  /** Of the tool that wrote it. */
  readonly version: string;
  readonly design: {
    readonly title: string | null;
    /** SHA-256 of the design as the tool writes it: the same design hashes the same however its file was laid out. */
    readonly sha256: string;
  };
  readonly notes: readonly string[];
  /** Every file but this one. */
  readonly files: readonly { readonly name: string; readonly size: number; readonly sha256: string }[];
  readonly notMade: readonly NotMade[];
  /** Of parts that are made all the same, and of how tubes are made and cut. */
  readonly warnings: readonly { readonly where: string; readonly message: string }[];
  /** Whether the design holds every rule, and what fails. */
  readonly check: {
    readonly ok: boolean;
    readonly problems: readonly { readonly rule: string; readonly where: string; readonly message: string }[];
  };
};

const NOTES = [
  'Lengths in mm, angles in degrees. The manifest does not list itself.',
  'A flange’s DXF is seen on its outer face, y up as on the head; its origin is the middle of the flange’s first port.',
  'Bend angles are nominal: prove springback on an offcut of the same tube before bending a runner.',
  'Deburr before welding; zinc and stainless give off harmful fume, and local codes and licensed practice come first.',
];

/**
 * @param design the design as `writeDesign` writes it, UTF-8
 * @param starts of tubes that start elsewhere than their bend table, in words
 */
export async function manifestOf(
  header: Header,
  design: Uint8Array<ArrayBuffer>,
  files: readonly NamedFile[],
  notMade: readonly NotMade[],
  warnings: readonly Pick<PartRemark, 'where' | 'message'>[],
  report: CheckReport,
  starts: readonly string[],
): Promise<Manifest> {
  return {
    format: MANIFEST_FORMAT,
    version: VERSION,
    design: { title: header.design.title ?? null, sha256: await sha256(design) },
    notes: [...NOTES, START_RULE, ...starts],
    files: await Promise.all(
      files.map(async ({ name, bytes }) => ({ name, size: bytes.length, sha256: await sha256(bytes) })),
    ),
    notMade,
    warnings: warnings.map(({ where, message }) => ({ where, message })),
    check: { ok: report.ok, problems: report.problems.map(({ rule, where, message }) => ({ rule, where, message })) },
  };
}

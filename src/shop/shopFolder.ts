/**
 * Everything the fabricator needs, as named files in memory: pure, the same names and bytes for the same design every
 * time. Who calls puts them in a folder or a zip.
 */
import { check, type Meshes, type Problem, resolveHeader } from '../../geometry';
import type { Design } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import type { NamedFile } from '../formats/zip/zip';
import { BEND_SCHEDULE, bendSchedule } from './bendSchedule';
import { CUT_LIST, cutList } from './cutList';
import { flangeDrawings } from './flanges';
import { INTERSECTION_POINTS, intersectionPoints } from './intersectionPoints';
import { MANIFEST, manifestOf } from './manifest';
import { notYetMade } from './notYet';
import { type NotMade, partsOf } from './part';
import { solids } from './solids';
import { START_CLOCKING, startClocking } from './startClocking';

export type ShopFolder = {
  /** The manifest comes last: a folder that has it has the rest. */
  readonly files: readonly NamedFile[];
  /** Of the design, as `check` finds them; the files are made all the same, and the manifest says so. */
  readonly problems: readonly Problem[];
  /** Runners that are in no table and flanges that are in no drawing, with the reason. */
  readonly leftOut: readonly NotMade[];
};

/** @param meshes the surroundings' meshes by file name, for the check that the manifest sums up */
export async function shopFolder(design: Design, meshes: Meshes = new Map()): Promise<ShopFolder> {
  const header = resolveHeader(design);
  const report = check(design, meshes);
  const { parts, leftOut } = partsOf(header);
  const cuts = cutList(parts);
  const meshed = solids(parts);
  const flanges = flangeDrawings(header);
  const files: NamedFile[] = [
    textFile(BEND_SCHEDULE, bendSchedule(parts)),
    textFile(START_CLOCKING, startClocking(parts)),
    textFile(INTERSECTION_POINTS, intersectionPoints(parts)),
    textFile(CUT_LIST, cuts.text),
    ...meshed.files,
    ...flanges.files,
  ];
  const notMade = [...leftOut, ...cuts.notMade, ...meshed.notMade, ...flanges.notMade, ...notYetMade(header)];
  const manifest = await manifestOf(header, utf8(writeDesign(design)), files, notMade, report);
  files.push(textFile(MANIFEST, `${JSON.stringify(manifest, null, 2)}\n`));
  return { files, problems: report.problems, leftOut: [...leftOut, ...meshed.notMade, ...flanges.notMade] };
}

const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

const textFile = (name: string, text: string): NamedFile => ({ name, bytes: utf8(text) });

/**
 * Everything the fabricator needs, as named files in memory: pure, the same names and bytes for the same design every
 * time. Who calls puts them in a folder or a zip.
 */

import {
  checkHeader,
  gapReport,
  headerCuts,
  headerParts,
  type Made,
  type Meshes,
  type PartRemark,
  type Problem,
  resolveHeader,
  roomReport,
} from '../../geometry';
import type { Design } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import { sha256 } from '../formats/hash/sha256';
import type { NamedFile } from '../formats/zip/zip';
import { BEND_SCHEDULE, bendSchedule } from './bendSchedule';
import { copes } from './copes';
import { CUT_LIST, cutList } from './cutList';
import { roomTables } from './fitting/tables';
import { beforeCutting } from './fitting/words';
import { flangeSheetPlans } from './flangeSheetPlans';
import { flangeDrawings } from './flanges';
import { flatParts } from './flatParts';
import { INTERSECTION_POINTS, intersectionPoints } from './intersectionPoints';
import { makingOf } from './making/making';
import type { Remark } from './making/report';
import { makingTables } from './making/tables';
import { MANIFEST, manifestOf } from './manifest';
import { notYetMade } from './notYet';
import {
  cautionGroup,
  coverOf,
  fittingGroup,
  flangeGroup,
  guideGroup,
  inspectionGroup,
  materialGroup,
  runnerGroup,
  stockGroup,
  templateGroup,
  weldGroup,
} from './packet/groups';
import { DEFAULT_PAPER_THICKNESS, PACKET, type PaperOptions, packet } from './packet/packet';
import { type NotMade, partsOf } from './part';
import { DEFAULT_PAPER } from './sheet/paper';
import type { Stamp } from './sheet/sheet';
import { solids } from './solids';
import { START_CLOCKING, startClocking } from './startClocking';
import { tubeStarts } from './tubeStart';

export type ShopFolder = {
  /** The manifest comes last: a folder that has it has the rest. */
  readonly files: readonly NamedFile[];
  /** Of the design, as `check` finds them; the files are made all the same, and the manifest says so. */
  readonly problems: readonly Problem[];
  /** Runners that are in no table, parts that are in no file and flanges that are in no drawing, with the reason. */
  readonly leftOut: readonly NotMade[];
  /** Of parts that are made all the same. */
  readonly warnings: readonly PartRemark[];
  /** Of how tubes are made and what they are cut from; one that stops says what cannot be made so, and the files are there all the same. */
  readonly remarks: readonly Remark[];
};

/** What is left out is as usual: A4, office paper, 16 stations. */
export type PaperChoice = Partial<Pick<PaperOptions, 'paper' | 'paperThickness' | 'stations'>>;

export type ShopOptions = PaperChoice & {
  /** Told what is being made next. */
  readonly see?: (what: string) => void;
};

/** A gap that is near in motion is wider at rest; the list alone is wanted, not the gap all along. mm. */
const AT_REST = { within: 200, step: 1000 };

/** @param meshes the surroundings' meshes by file name, for the check that the manifest sums up */
export async function shopFolder(
  design: Design,
  meshes: Meshes = new Map(),
  { paper = DEFAULT_PAPER, paperThickness = DEFAULT_PAPER_THICKNESS, stations = 16, see = () => {} }: ShopOptions = {},
): Promise<ShopFolder> {
  const header = resolveHeader(design);
  see('check');
  const report = checkHeader(header, meshes);
  const { parts, leftOut } = partsOf(header);
  const cuts = cutList(parts);
  see('tables');
  const made = await headerParts(header, ({ what }) => see(what));
  const meshed = solids(withoutTwice(made, leftOut));
  see('drawings');
  const flanges = flangeDrawings(header);
  see('fitting');
  const room = roomReport(header, meshes);
  const { motion, ...motionless } = design;
  const still = motion ? gapReport(resolveHeader(motionless), meshes, AT_REST) : undefined;
  see('making');
  const making = await makingOf(header, made);
  see('paper');
  const bytes = utf8(writeDesign(design));
  const { display = 'mm' } = design;
  const stamp: Stamp = { design: design.title ?? 'Untitled header', hash: await sha256(bytes), display };
  const onPaper: PaperOptions = { paper, paperThickness, stations, display };
  const slantedCuts = headerCuts(header);
  const bench = { header, making };
  const groups = [
    cautionGroup(bench, onPaper),
    materialGroup(bench, onPaper),
    stockGroup(bench, onPaper),
    runnerGroup(bench, onPaper),
    guideGroup(parts, onPaper),
    templateGroup(slantedCuts, onPaper),
    flangeGroup(flangeSheetPlans(header), onPaper),
    weldGroup(bench, onPaper),
    fittingGroup({ header, room, ...(still ? { still } : {}) }, onPaper),
    inspectionGroup(bench, onPaper),
  ];
  const problems = report.problems.map(({ where, message }) => `${where}: ${message}`);
  const state = {
    problems,
    fitting: beforeCutting(room),
    ...coverOf(bench, onPaper),
  };
  const files: NamedFile[] = [
    textFile(BEND_SCHEDULE, bendSchedule(parts)),
    textFile(START_CLOCKING, startClocking(parts)),
    textFile(INTERSECTION_POINTS, intersectionPoints(parts)),
    textFile(CUT_LIST, cuts.text),
    ...[...roomTables(design, room), ...makingTables(making)].map(({ name, text }) => textFile(name, text)),
    ...meshed.files,
    ...flanges.files,
    ...flatParts(made.parts),
    ...copes(slantedCuts, onPaper, stamp),
    { name: PACKET, bytes: await packet(groups, stamp, state, paper) },
  ];
  const notMade = [...leftOut, ...cuts.notMade, ...meshed.notMade, ...flanges.notMade, ...notYetMade()];
  const toKnow = [...made.warnings, ...making.remarks];
  const manifest = await manifestOf(header, bytes, files, notMade, toKnow, report, tubeStarts(parts));
  files.push(textFile(MANIFEST, `${JSON.stringify(manifest, null, 2)}\n`));
  return {
    files,
    problems: report.problems,
    leftOut: [...leftOut, ...meshed.notMade, ...flanges.notMade],
    warnings: made.warnings,
    remarks: making.remarks,
  };
}

/** A runner that is in no table is named once, with all it is missing from. */
const withoutTwice = (made: Made, leftOut: readonly NotMade[]): Made => ({
  ...made,
  notMade: made.notMade.filter(({ part }) => !leftOut.some(({ name }) => name === part)),
});

const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

const textFile = (name: string, text: string): NamedFile => ({ name, bytes: utf8(text) });

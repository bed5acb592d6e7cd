/**
 * `scan DESIGN --file MESH --unit UNIT -o OUT`: a mesh file becomes a surrounding of the design, or takes the place of one. Says
 * what was read, how large it is, where it stands and how well three points met their places. The mesh lies beside OUT
 * afterwards, copied there where it did not.
 */
import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import {
  countedSoup,
  MM_PER_UNIT,
  type PosedByPoints,
  placeMesh,
  poseFromPoints,
  soupBox,
  unitOf,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design, LengthUnit, MeshSurrounding } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { SURROUNDING_KINDS, surroundingKind } from '../../../shared/stock/surroundingKinds';
import { noteLines } from '../../formats/mesh/notes';
import { readMesh, tooFar } from '../../formats/mesh/readMesh';
import { boxArgument, numberArgument, threePointsArgument } from '../arguments';
import { insistWritable, readBytes, writeWhole } from '../files';
import { HOLDS, type Io, UnusableInput } from '../io';
import { printScan, type Scanned } from '../print/scan';
import { designAt, MAX_MESH_BYTES, naming } from '../readDesign';

export type ScanArguments = {
  readonly output: string;
  readonly file: string;
  readonly unit?: string;
  readonly id?: string;
  readonly kind?: string;
  readonly clearance?: string;
  readonly crop?: string;
  readonly thin?: string;
  readonly points?: string;
  readonly at?: string;
  readonly json?: boolean;
};

export function scanCommand(path: string, options: ScanArguments, io: Io): number {
  const output = resolve(io.cwd, options.output);
  const file = resolve(io.cwd, options.file);
  const unit = unitArgument(options, file);
  insistKind(options);
  insistWritable(output);
  const design = designAt(resolve(io.cwd, path));
  const bytes = readBytes(file, MAX_MESH_BYTES);
  const { soup, notes } = naming(file, () => readMesh(basename(file), bytes));
  const refusal = tooFar(notes.box, MM_PER_UNIT[unit]);
  if (refusal) throw new UnusableInput(`${file}: ${refusal}`);
  const posed = posedBy(options, unit);
  const { surrounding, proposed } = surroundingOf(design, options, basename(file), unit, posed);
  const next = naming(options.output, () => parseDesign(writeDesign(withIt(design, surrounding))));
  const counted = countedSoup(surrounding, soup);
  if (counted.length === 0)
    throw new UnusableInput(
      `--crop: nothing of the mesh reaches into that box; in mm along its own axes it lies within ${inMm(notes.box, unit)}`,
    );
  const copied = copyBeside(file, output, bytes);
  writeWhole(output, writeDesign(next));
  const scanned: Scanned = {
    file: basename(file),
    unit,
    notes,
    counted: counted.length / 9,
    placed: soupBox(placeMesh(surrounding, soup)),
    surrounding,
    proposed,
    posed,
    copied,
    output: options.output,
  };
  io.out(options.json ? `${JSON.stringify(scanned, null, 2)}\n` : printScan(scanned, noteLines(notes)));
  return HOLDS;
}

function unitArgument({ unit }: ScanArguments, file: string): LengthUnit {
  if (unit === undefined) {
    if (/\.glb$/i.test(file)) return unitOf({ file });
    throw new UnusableInput(
      `--unit: ${basename(file)} does not say its unit; allowed: mm, cm, m, in. If you do not know, measure something on it`,
    );
  }
  if (unit in MM_PER_UNIT) return unit as LengthUnit;
  throw new UnusableInput(`--unit: found "${unit}"; allowed: mm, cm, m, in`);
}

/** A slip of the pen would leave it without clearance. A kind of one's own is welcome with a clearance of its own. */
function insistKind({ kind, clearance }: ScanArguments): void {
  if (kind === undefined || clearance !== undefined || surroundingKind(kind)) return;
  const known = SURROUNDING_KINDS.map((k) => k.kind).join(', ');
  throw new UnusableInput(
    `--kind: found "${kind}", for which no clearance is proposed; allowed: ${known}; or give --clearance`,
  );
}

function posedBy({ points, at }: ScanArguments, unit: LengthUnit): PosedByPoints | null {
  if (points === undefined && at === undefined) return null;
  if (points === undefined || at === undefined)
    throw new UnusableInput(
      '--points and --at belong together: three points on the scan, and where each is in the design',
    );
  const answer = poseFromPoints(threePointsArgument('--points', points), threePointsArgument('--at', at), unit);
  if ('refusal' in answer) throw new UnusableInput(`--points: ${answer.refusal}`);
  return answer;
}

type Made = { readonly surrounding: MeshSurrounding; readonly proposed: boolean };

/** One that is replaced keeps its clearance and kind where nothing else is asked, and its place where the file is the same. */
function surroundingOf(
  design: Design,
  options: ScanArguments,
  file: string,
  unit: LengthUnit,
  posed: PosedByPoints | null,
): Made {
  const all = design.surroundings ?? [];
  const id = options.id ?? freeId(file.replace(/\.[^.]*$/, ''), all);
  const before = all.find((s) => s.id === id);
  const same = before?.shape === 'mesh' && before.file === file ? before : undefined;
  const kind = options.kind === undefined ? before?.kind : (surroundingKind(options.kind)?.kind ?? options.kind);
  const proposal = options.kind === undefined ? undefined : surroundingKind(options.kind)?.clearance;
  const asked = options.clearance === undefined ? undefined : numberArgument('--clearance', options.clearance);
  const clearance = asked ?? proposal ?? before?.clearance;
  const pose = posed?.pose ?? same?.pose;
  const crop = options.crop === undefined ? same?.crop : boxArgument('--crop', options.crop);
  const thin = options.thin === undefined ? same?.thin : numberArgument('--thin', options.thin);
  const surrounding: MeshSurrounding = {
    id,
    shape: 'mesh',
    file,
    unit,
    ...(pose ? { pose } : {}),
    ...(crop ? { crop } : {}),
    ...(thin === undefined ? {} : { thin }),
    ...(clearance === undefined ? {} : { clearance }),
    ...(kind === undefined ? {} : { kind }),
    ...(before?.fixedTo ? { fixedTo: before.fixedTo } : {}),
  };
  return { surrounding, proposed: asked === undefined && proposal !== undefined };
}

function freeId(wanted: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map((s) => s.id.toLowerCase()));
  for (let n = 1; ; n++) {
    const id = n === 1 ? wanted : `${wanted} ${n}`;
    if (!ids.has(id.toLowerCase())) return id;
  }
}

function withIt(design: Design, surrounding: MeshSurrounding): Design {
  const all = design.surroundings ?? [];
  const isThere = all.some((s) => s.id === surrounding.id);
  const surroundings = isThere ? all.map((s) => (s.id === surrounding.id ? surrounding : s)) : [...all, surrounding];
  return { ...design, surroundings };
}

/** @returns where it was copied to; null where it lay there */
function copyBeside(file: string, output: string, bytes: Uint8Array): string | null {
  const beside = join(dirname(output), basename(file));
  if (beside === file) return null;
  if (existsSync(beside)) {
    if (Buffer.compare(readFileSync(beside), bytes) === 0) return null;
    throw new UnusableInput(`${beside}: another file of this name lies beside the design; rename one of them`);
  }
  writeWhole(beside, bytes);
  return beside;
}

const inMm = (box: readonly number[], unit: LengthUnit): string =>
  box.map((x) => Number((x * MM_PER_UNIT[unit]).toFixed(1))).join(',');

/** `outline DESIGN --flange ID (--dxf FILE | --picture FILE …) -o OUT`: a drawn or scanned outline taken into the design. */
import { resolve } from 'node:path';
import {
  type Loop,
  type PlacedDrawing,
  type PlacingOptions,
  type Point2,
  placeDrawing,
  TraceError,
  takeDrawing,
  traceRaster,
} from '../../../geometry';
import { validateDesign } from '../../../shared/design/parse';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { parseLength } from '../../../shared/units';
import { DxfError, DxfUnitError } from '../../formats/dxf/dxfError';
import { MAX_DXF_BYTES, readDxf } from '../../formats/dxf/read';
import { numberArgument, wholeArgument } from '../arguments';
import { insistWritable, readBytes, writeWhole } from '../files';
import { HOLDS, type Io, UnusableInput } from '../io';
import { outlineJson, printOutline } from '../print/outline';
import { loadDesign } from '../readDesign';
import { readPicture } from '../readPicture';

export type OutlineArguments = {
  readonly output: string;
  readonly flange: string;
  readonly dxf?: string;
  readonly unit?: string;
  readonly picture?: string;
  readonly between?: string;
  readonly distance?: string;
  readonly threshold?: string;
  readonly fasteners?: boolean;
  readonly openings?: boolean;
  readonly mirror?: boolean;
  readonly upsideDown?: boolean;
  readonly offset?: string;
  readonly turn?: string;
  readonly json?: boolean;
};

export async function outlineCommand(path: string, options: OutlineArguments, io: Io): Promise<number> {
  const output = resolve(io.cwd, options.output);
  const placing = placingOf(options);
  insistSource(options);
  insistWritable(output);
  const { design } = loadDesign(path, io);
  const drawn = options.dxf === undefined ? await fromPicture(options, design, io) : fromDxf(options, io);
  const placed = naming(path, () => placeDrawing(design, options.flange, drawn.loops, placing));
  const next = naming(path, () => validateDesign(takeDrawing(design, placed, options)));
  writeWhole(output, writeDesign(next));
  const notes = [...drawn.notes, ...placed.notes];
  io.out(
    options.json
      ? `${JSON.stringify(outlineJson(placed, notes, options.output), null, 2)}\n`
      : printOutline(placed, notes, taken(placed, options), options.output),
  );
  return HOLDS;
}

type Drawn = { readonly loops: readonly Loop[]; readonly notes: readonly string[] };

function insistSource({ dxf, picture, between, distance, threshold, unit }: OutlineArguments): void {
  if ((dxf === undefined) === (picture === undefined))
    throw new UnusableInput('outline: one of --dxf and --picture is wanted, and not both');
  const ofPicture = [between, distance, threshold].some((given) => given !== undefined);
  if (dxf !== undefined && ofPicture)
    throw new UnusableInput('outline: --between, --distance and --threshold belong to --picture');
  if (picture !== undefined && unit !== undefined) throw new UnusableInput('outline: --unit belongs to --dxf');
  if (picture !== undefined && (between === undefined || distance === undefined))
    throw new UnusableInput(
      'outline: a picture has no scale of its own: --between X1,Y1,X2,Y2 names two of its points in pixels, --distance how far apart they truly are',
    );
}

function fromDxf({ dxf, unit }: OutlineArguments, io: Io): Drawn {
  if (unit !== undefined && unit !== 'mm' && unit !== 'in')
    throw new UnusableInput(`--unit: found "${unit}"; allowed: mm or in`);
  const full = resolve(io.cwd, dxf!);
  const bytes = readBytes(full, MAX_DXF_BYTES);
  try {
    const { loops, notes } = readDxf(bytes, unit);
    return { loops: loops.map(({ loop }) => loop), notes };
  } catch (error) {
    const how = error instanceof DxfUnitError ? ' (--unit mm or --unit in)' : '';
    if (error instanceof DxfError) throw new UnusableInput(`${full}: ${error.message}${how}`);
    throw error;
  }
}

async function fromPicture(options: OutlineArguments, design: Design, io: Io): Promise<Drawn> {
  const between = pointsOf(options.between!);
  const distance = parseLength(options.distance!, design.display ?? 'mm');
  if (!distance.ok) throw new UnusableInput(`--distance: ${distance.problem}`);
  if (!(distance.mm > 0))
    throw new UnusableInput(
      `--distance: found "${options.distance}"; allowed: a length above 0, as between the two points`,
    );
  const threshold =
    options.threshold === undefined ? undefined : wholeArgument('--threshold', options.threshold, 1, 254);
  const full = resolve(io.cwd, options.picture!);
  const raster = await readPicture(full);
  try {
    const traced = traceRaster(
      raster,
      { between, distance: distance.mm },
      threshold === undefined ? {} : { threshold },
    );
    const { mmPerPixel, stray, specks } = traced;
    return {
      loops: traced.loops.map(({ loop }) => loop),
      notes: [
        `Traced what is ${traced.shade === 'dark' ? 'darker' : 'lighter'} than ${Math.round(traced.threshold)} of 255, ${(25.4 / mmPerPixel).toFixed(1)} dots an inch; the curves stray at most ${stray.toFixed(3)} mm from the picture's edges.`,
        ...(specks > 0 ? [`${specks} ${specks === 1 ? 'speck' : 'specks'} and separate pieces left out.`] : []),
      ],
    };
  } catch (error) {
    if (error instanceof TraceError) throw new UnusableInput(`${full}: ${error.message}`);
    throw error;
  }
}

function pointsOf(text: string): readonly [Point2, Point2] {
  const [a, b, c, d, ...more] = text.split(',').map((part) => numberArgument('--between', part));
  if (d === undefined || more.length > 0)
    throw new UnusableInput(`--between: found "${text}"; allowed: four numbers such as 120,80,2040,95`);
  return [
    [a!, b!],
    [c!, d],
  ];
}

function placingOf({ mirror, upsideDown, offset, turn }: OutlineArguments): PlacingOptions {
  if (turn !== undefined && offset === undefined) throw new UnusableInput('outline: --turn belongs to --offset');
  const shift = offset?.split(',').map((part) => numberArgument('--offset', part));
  if (shift && shift.length !== 2)
    throw new UnusableInput(`--offset: found "${offset}"; allowed: two numbers such as 45,-12`);
  return {
    ...(mirror ? { mirrored: true } : {}),
    ...(upsideDown ? { turned: true } : {}),
    ...(shift
      ? {
          offset: {
            shift: [shift[0]!, shift[1]!],
            ...(turn === undefined ? {} : { turn: numberArgument('--turn', turn) }),
          },
        }
      : {}),
  };
}

const taken = ({ holes, openings }: PlacedDrawing, asked: OutlineArguments): string =>
  [
    'the outline',
    ...(asked.fasteners ? [`${holes.length} holes as fasteners`] : []),
    ...(asked.openings ? [`${openings.length} openings`] : []),
  ].join(', ');

function naming<T>(path: string, act: () => T): T {
  try {
    return act();
  } catch (error) {
    if (error instanceof DesignError) throw new UnusableInput(`${path}: ${error.message}`);
    throw error;
  }
}

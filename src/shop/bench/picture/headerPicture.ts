/**
 * The header as a line drawing, hidden lines left out, from where most of its tubes is seen. To no scale that anybody measures
 * from; fitted to the room it has. mm on paper, y down.
 */
import { add, dot, type Header, norm, pointAt, scale, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { type Box, heightOf, type Item, type Point, widthOf } from '../../../formats/drawing/drawing';
import { polyline } from '../../../formats/drawing/items';
import { EDGE, TYPE } from '../../sheet/style';
import { hidingOf } from './bodies';
import { type Label, labelled } from './labels';
import { headerLines, ROUGH } from './lines';
import { seen, type View, viewFrom } from './view';
import { type Flat, visibleLength, visibleRuns } from './visible';

/** A place of the design with its words. */
export type Mark = { readonly words: string; readonly place: Vec3; readonly dot?: true; readonly bold?: true };

export type Picture = { readonly items: readonly Item[]; readonly box: Box /** Marks with no room. */; left: string[] };

/** Degrees above level, and how many places round about are tried. */
const ELEVATION = 25;
const PLACES = 16;
const COARSE = 16;
/** Ports that look about one way are looked at from their side, so that no flange stands before its tubes: cosines. */
const ONE_WAY = 0.5;
const FROM_FRONT = 0.2;
/** From place to place along what is drawn, on paper. */
const STEP = 0.35;
/** Round the drawing, for words. */
const RIM = 12;

/** Where most of the tubes' edges is seen, as large as it then comes out. */
export function bestView(header: Header, room: { width: number; height: number }): View {
  const ports = [...header.ports.values()].map(({ pose }) => pose.direction);
  const outward = scale(ports.reduce(add, [0, 0, 0]), 1 / Math.max(1, ports.length));
  const front = norm(outward) > ONE_WAY ? outward : null;
  const views = Array.from({ length: PLACES }, (_, k) => viewFrom((360 * k) / PLACES + 7.5, ELEVATION));
  let [best, most] = [views[0]!, -1];
  for (const view of views) {
    if (front && dot(unit(front), view.toward) < FROM_FRONT) continue;
    const { lines, bodies } = headerLines(header, view, ROUGH);
    if (lines.length === 0) continue;
    const length = visibleLength(lines, hidingOf(bodies), COARSE) * scaleOf(boxOf(lines), room);
    if (length > most) [best, most] = [view, length];
  }
  return best;
}

/** Null where nothing of the header can be drawn yet. */
export function headerPicture(
  header: Header,
  room: { readonly width: number; readonly height: number },
  marks: readonly Mark[],
  size: number = TYPE.plain,
  view: View = bestView(header, room),
): Picture | null {
  const { lines, bodies } = headerLines(header, view);
  if (!lines.some((l) => l.length > 1)) return null;
  const bounds = boxOf(lines);
  const ratio = scaleOf(bounds, room);
  const left = (room.width - ratio * widthOf(bounds)) / 2;
  const top = (room.height - ratio * heightOf(bounds)) / 2;
  const onPaper = ([x, y]: readonly [number, number, ...unknown[]]): Point => [
    left + ratio * (x - bounds.left),
    top + ratio * (bounds.bottom - y),
  ];
  const drawn = visibleRuns(lines, hidingOf(bodies), STEP / ratio).map((run: Flat[]) => run.map(onPaper));
  const labels = marks.map(
    ({ words, place, dot, bold }): Label => ({
      words,
      at: onPaper(seen(view, place)),
      size,
      ...(dot ? { dot } : {}),
      ...(bold ? { bold } : {}),
    }),
  );
  const box = { left: 0, top: 0, right: room.width, bottom: room.height };
  const words = labelled(labels, drawn, box);
  return { items: [...drawn.map((run) => polyline(run, EDGE)), ...words.items], box, left: words.left };
}

/** Runner ids beside their middles, collectors' at their outlets. */
export const nameMarks = ({ runners, merges }: Header): Mark[] => [
  ...runners.flatMap(({ runner, centerline: line }): Mark[] =>
    line ? [{ words: runner.id, place: pointAt(line, Math.min(0.22 * line.length, 120)).position, bold: true }] : [],
  ),
  ...[...merges.values()].map(({ merge, outlet }): Mark => ({ words: merge.id, place: outlet.position, bold: true })),
];

function boxOf(lines: readonly (readonly Vec3[])[]): Box {
  const points = lines.flat();
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const least = (of: readonly number[]): number => of.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = (of: readonly number[]): number => of.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return { left: least(xs), right: most(xs), top: least(ys), bottom: most(ys) };
}

const scaleOf = (box: Box, { width, height }: { width: number; height: number }): number =>
  Math.min((width - 2 * RIM) / widthOf(box), (height - 2 * RIM) / heightOf(box));

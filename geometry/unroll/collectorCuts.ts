/**
 * The cuts of a collector's tubes, unrolled: each along the planes it shares with its neighbours and across its end. The
 * seam lies on the line farthest from the collector's axis, where a tube stays longest. mm, radians.
 */
import { sayIn } from '../check/words';
import { type CollectorPlan, collectorPlan } from '../collector/plan';
import { type Stub, stubs } from '../collector/stubs';
import type { Header } from '../header/resolve';
import type { Line2 } from '../solid/clip2';
import { crossings, cutHeight, heightLines } from '../solid/cutTube';
import { LENGTH_TOLERANCE } from '../tolerance';
import { extremes } from './extremes';
import type { WrapCut } from './wrapCut';

/** Tubes that are cut alike share a template; a tube cut square needs none, nor has a collector that cannot be built any. */
export function collectorCuts(header: Header): WrapCut[] {
  return [...header.merges.values()].flatMap((merge) => {
    const plan = collectorPlan(header, merge);
    if (plan.problems.length > 0) return [];
    const alike: { cut: WrapCut; numbers: number[] }[] = [];
    for (const stub of stubs(plan)) {
      const cut = stubCut(header, plan, stub);
      const same = alike.find((other) => sameCurve(other.cut, cut));
      if (same) same.numbers.push(stub.number);
      else alike.push({ cut, numbers: [stub.number] });
    }
    return alike.filter(({ cut }) => !isSquare(cut)).map(({ cut, numbers }) => shared(plan, cut, numbers));
  });
}

const SAMPLES = Array.from({ length: 720 }, (_, i) => (2 * Math.PI * i) / 720);

const sameCurve = (a: WrapCut, b: WrapCut): boolean =>
  SAMPLES.every((x) => Math.abs(a.height(x) - b.height(x)) < ON_CUT);

const isSquare = ({ height }: WrapCut): boolean => SAMPLES.every((x) => Math.abs(height(x) - height(0)) < ON_CUT);

function shared({ id, meets }: CollectorPlan, cut: WrapCut, numbers: readonly number[]): WrapCut {
  if (numbers.length === 1) return cut;
  return {
    ...cut,
    id: `${id} stubs ${numbers.join(' ')}`,
    title: `${titled(id)}, tubes of inlets ${listed(numbers)}: ${placeOf(meets)}`,
    notes: [`${numbers.length} off, all alike: print one for each.`, ...cut.notes],
  };
}

const placeOf = (meets: boolean): string => (meets ? 'where tubes meet' : 'where it ends at the plate');

const listed = (numbers: readonly number[]): string =>
  numbers.length > 2 && numbers.at(-1)! - numbers[0]! === numbers.length - 1
    ? `${numbers[0]} to ${numbers.at(-1)}`
    : numbers.join(', ');

/** An id that says that it is a collector is not told so twice. */
const titled = (id: string): string =>
  /collector/i.test(id) ? `${id[0]!.toUpperCase()}${id.slice(1)}` : `Collector ${id}`;

/** From the seam (along y) to an angle of the tube's own frame (from x). */
const SEAM = Math.PI / 2;

/** Of one tube, square or not. */
export function stubCut({ design }: Header, plan: CollectorPlan, { number, shape }: Stub): WrapCut {
  const { outsideDiameter, wall, start, planes } = shape;
  const radius = outsideDiameter / 2;
  const lines = heightLines(planes);
  const height = (angle: number): number => {
    const a = angle + SEAM;
    return Math.max(0, cutHeight(lines, [radius * Math.cos(a), radius * Math.sin(a)]) - start);
  };
  const corners = cornersOf(lines, start, radius);
  const { highest, lowest } = extremes(height, corners);
  const gap =
    plan.weldGap > 0
      ? [`Cut back by half the weld gap of ${sayIn(design.display)(plan.weldGap)} on every shared face.`]
      : [];
  return {
    id: `${plan.id} stub ${number}`,
    title: `${titled(plan.id)}, tube of inlet ${number}: ${placeOf(plan.meets)}`,
    outsideDiameter,
    wall,
    measuredOn: 'outside',
    height,
    corners,
    heel: highest[0]!,
    crotch: lowest[0]!,
    seam: 'the line farthest from the axis of the collector',
    notes: [
      'The base line is the square end at the inlet. Every face of the cut is flat: saw or grind across the whole wall.',
      ...gap,
    ],
  };
}

/** Angles from the seam at which one plane gives way to another, or to the base line where nothing of the tube is left. */
function cornersOf(lines: readonly Line2[], start: number, radius: number): number[] {
  const pairs = lines.flatMap((p, i) => [[start, 0, 0] as const, ...lines.slice(i + 1)].map((q) => [p, q] as const));
  const found = pairs.flatMap(([p, q]) =>
    crossings([p[0] - q[0], p[1] - q[1], p[2] - q[2]], radius).filter((a) => {
      const at = [radius * Math.cos(a), radius * Math.sin(a)] as const;
      const height = cutHeight(lines, at);
      return height > start - ON_CUT && cutHeight([p], at) - height < ON_CUT;
    }),
  );
  const own = found.map((a) => (a - SEAM + 2 * Math.PI) % (2 * Math.PI)).sort((a, b) => a - b);
  return own.filter((a, k) => k === 0 || a - own[k - 1]! > SAME_ANGLE);
}
const ON_CUT = 1000 * LENGTH_TOLERANCE;
const SAME_ANGLE = 1e-6;

/** What the drawing of a plate says beside its lines: of that plate alone, however many the flange has. In the design's unit; common practice. */
import type { Flange } from '../../shared/design/types';
import { sayIn } from '../check/words';
import { DEFAULT_MATERIAL, type Header } from '../header/resolve';
import type { Loop } from '../plane/loop';
import type { PlateHole, PlatePlan } from './plan';
import { listed } from './words';

/** @param plates all of the flange's */
export function plateNotes(
  { design }: Header,
  flange: Flange,
  plate: PlatePlan,
  plates: readonly PlatePlan[],
): string[] {
  const say = sayIn(design.display);
  const material = (flange.material ?? DEFAULT_MATERIAL).replaceAll('-', ' ');
  const { holes, bites } = plate;
  return [
    `${say(flange.thickness)} ${material}, 1 off${ofHowMany(plate, plates)}.`,
    ...sizesOf(holes, say).map(([size, of]) => `${of.length} ${of.length === 1 ? 'hole' : 'holes'} ${size}.`),
    ...sizesOf(bites, say).map(([size, of]) => {
      const names = listed(of.map((b) => String(b.fastener + 1)));
      return of.length === 1
        ? `Half a hole ${size} in its edge: fastener ${names} is shared with the plate beside it; clamp both plates under one thick washer.`
        : `${of.length} half holes ${size} in its edge: fasteners ${names} are shared with the plates beside it; clamp both plates under one thick washer.`;
    }),
    ...[...new Set(plate.steps.map((s) => s.depth))].map(
      (depth) => `Steps (ETCH) milled ${say(depth)} deep from the outer face; not cut through.`,
    ),
    'Bolt down to the head or a thick plate while welding, let it cool there, then face flat.',
    'The outer face is shown: the tubes stand toward you. Break all edges.',
  ];
}

function ofHowMany(plate: PlatePlan, plates: readonly PlatePlan[]): string {
  if (plates.length === 1) return '';
  const same = plates
    .filter((other) => other !== plate && alike(other, plate))
    .map((other) => `port ${other.ports[0]}`);
  const which = `, one of ${plates.length} plates, for port ${plate.ports[0]}`;
  return same.length > 0 ? `${which}; alike: that of ${listed(same)}` : which;
}

function sizesOf(holes: readonly PlateHole[], say: (mm: number) => string): [size: string, of: PlateHole[]][] {
  const sizes = new Map<string, PlateHole[]>();
  for (const hole of holes) {
    const size = `${say(hole.diameter)} for ${hole.thread}${hole.series ? `, ISO 273 ${hole.series}` : ''}`;
    sizes.set(size, [...(sizes.get(size) ?? []), hole]);
  }
  return [...sizes];
}

/** Cut to the same lines, so that either can take the other's place. */
function alike(a: PlatePlan, b: PlatePlan): boolean {
  const lines = (p: PlatePlan): Loop[] => [p.outline, ...p.openings.map((o) => o.loop), ...p.steps.map((s) => s.loop)];
  const whole = (p: PlatePlan): (readonly number[])[] =>
    p.holes.map(({ centre: [x, y], diameter }) => [x, y, diameter]).sort((m, n) => m[0]! - n[0]! || m[1]! - n[1]!);
  const [mine, theirs] = [lines(a), lines(b)];
  return (
    a.steps.length === b.steps.length &&
    mine.length === theirs.length &&
    mine.every((loop, k) => nearly(loop, theirs[k]!)) &&
    nearly(whole(a), whole(b))
  );
}

const nearly = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]): boolean =>
  a.length === b.length && a.every((row, k) => row.every((v, n) => Math.abs(v - b[k]![n]!) < SAME));

/** mm, and of bulges. */
const SAME = 1e-6;

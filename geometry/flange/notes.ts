/** What the drawing of a flange says beside its lines. In the design's unit; common practice. */
import type { Flange } from '../../shared/design/types';
import { sayIn } from '../check/words';
import { DEFAULT_MATERIAL, type Header } from '../header/resolve';
import type { PlateHole, PlatePlan } from './plan';

export function flangeNotes({ design }: Header, flange: Flange, plates: readonly PlatePlan[]): string[] {
  const say = sayIn(design.display);
  const material = (flange.material ?? DEFAULT_MATERIAL).replaceAll('-', ' ');
  const notes = [
    `${say(flange.thickness)} ${material}, ${plates.length} off${plates.length > 1 ? ', one for each port' : ''}.`,
  ];
  const holes = new Map<number, PlateHole>();
  for (const hole of plates.flatMap((p) => [...p.holes, ...p.bites])) holes.set(hole.fastener, hole);
  const sizes = new Map<string, number>();
  for (const { diameter, thread, series } of holes.values()) {
    const size = `${say(diameter)} for ${thread}${series ? `, ISO 273 ${series}` : ''}`;
    sizes.set(size, (sizes.get(size) ?? 0) + 1);
  }
  for (const [size, count] of sizes) notes.push(`${count} holes ${size}.`.replace(/^1 holes/, '1 hole'));
  const depths = new Set(plates.flatMap((p) => p.steps.map((s) => s.depth)));
  for (const depth of depths)
    notes.push(`Steps (ETCH) milled ${say(depth)} deep from the outer face; not cut through.`);
  const shared = [...new Set(plates.flatMap((p) => p.bites.map((b) => b.fastener + 1)))].sort((a, b) => a - b);
  if (shared.length > 0)
    notes.push(
      `Fasteners ${shared.join(', ')} are shared: each plate has half of the hole; clamp both plates under one thick washer.`,
    );
  notes.push(
    'Bolt down to the head or a thick plate while welding, let it cool there, then face flat.',
    'The outer face is shown: the tubes stand toward you. Break all edges.',
  );
  return notes;
}

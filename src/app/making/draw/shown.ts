/** What of making is drawn into the picture while the leaf lies on top: a ring at each weld within a tube, the ends of the piece meant. */
import { type Header, pointAt } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { chosenWay } from '../../../shop/making/chosen';
import type { Making } from '../../../shop/making/report';
import type { Meant } from '../look';
import { stretchesOf } from '../pieces';
import { ring } from './rings';

export type JointShown = { readonly key: string; readonly runner: string; readonly text: string; readonly at: Vec3 };

export type MakeShown = {
  /** Pairs of points, three numbers each. */
  readonly welds: readonly number[];
  /** Those round the ends of the piece that is meant. */
  readonly ends: readonly number[];
  readonly joints: readonly JointShown[];
};

/** @param hides whether a runner is not drawn now */
export function makeShown(
  making: Making,
  header: Header,
  meant: Meant | null,
  hides: (runner: string) => boolean,
): MakeShown {
  const welds: number[] = [];
  const ends: number[] = [];
  const joints: JointShown[] = [];
  for (const welded of making.welded) {
    const { runner, tube, pieces, joints: own } = welded;
    const resolved = header.runners.find((r) => r.runner.id === runner);
    const line = resolved?.centerline;
    if (!resolved || !line || hides(runner)) continue;
    const radius = resolved.tubeRadius;
    const at = (station: number) => {
      const { position, tangent } = pointAt(line, station);
      return { position, ring: ring(position, tangent, radius) };
    };
    if (chosenWay(making, tube) === 'welded')
      for (const joint of own) {
        welds.push(...ring(joint.position, joint.direction, radius));
        const [before, behind] = [pieces[joint.after]!.id, pieces[joint.after + 1]!.id];
        // Of one runner: the second is known by its number.
        const text = `${before} | ${behind.slice(behind.lastIndexOf('-') + 1)}`;
        joints.push({ key: `joint ${runner} ${joint.after}`, runner, text, at: joint.position });
      }
    else
      for (const part of making.bent.filter((b) => b.runner === runner).slice(1)) {
        const found = at(part.from);
        welds.push(...found.ring);
        joints.push({ key: `joint ${part.id}`, runner, text: `weld before ${part.id}`, at: found.position });
      }
    const stretch = meant?.runner === runner && stretchesOf(welded, line.length).find((s) => s.piece === meant.piece);
    if (stretch && !meant.joint) ends.push(...at(stretch.from).ring);
    if (stretch) ends.push(...at(stretch.to).ring);
  }
  return { welds, ends, joints };
}

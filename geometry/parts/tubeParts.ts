/**
 * The runners' tubes as they are cut: the whole centerline, less what a transition at the port takes the place of, plus
 * what goes into a flange's step. mm.
 */
import { sayIn } from '../check/words';
import { type Centerline, centerline } from '../curve/centerline';
import type { Header, ResolvedRunner } from '../header/resolve';
import { tubeObstacle, tubeSolid, tubeVolume } from '../solid/tube';
import { STRAIGHT_TOLERANCE } from '../tolerance';
import { addScaled } from '../vector';
import type { HeaderPart, Made, PartRemark } from './part';
import { fromMesh } from './place';

/** How much farther in (positive) or out (negative) than its centerline's start the tube begins, mm. */
export function startTrim(header: Header, { runner }: Pick<ResolvedRunner, 'runner'>): number {
  if (!('port' in runner.from)) return 0;
  const { port: id } = runner.from;
  const transition = header.ports.get(id)?.port.transition;
  return transition ? -transition.length : stepDepthAt(header, id);
}

/** Of the step in the flange's outer face at a port; 0 where tubes are butted on its face, or there is no flange. */
export function stepDepthAt({ design }: Header, portId: string): number {
  const flange = design.flanges?.find(({ ports }) => ports.includes(portId));
  return flange?.seat === 'stepped' ? (flange.stepDepth ?? flange.thickness / 2) : 0;
}

/** The centerline of the tube itself. Where a transition takes more than its first straight, no line that can be made: `cutObstacle` says so. */
export const tubeLine = (header: Header, resolved: ResolvedRunner): Centerline | null =>
  trimmedLine(resolved, startTrim(header, resolved));

/** @param trim as `startTrim` says */
export function trimmedLine(resolved: ResolvedRunner, trim: number): Centerline | null {
  const { centerline: line } = resolved;
  if (!line || trim === 0) return line;
  const first = addScaled(line.points[0]!, resolved.start.direction, -trim);
  return centerline([first, ...line.points.slice(1)], line.radii);
}

/** What keeps a runner's tube from being made as it is cut, with the remedy; null where nothing does. */
export function cutObstacle(header: Header, resolved: ResolvedRunner): string | null {
  const { centerline: nominal, tube } = resolved;
  const line = tubeLine(header, resolved);
  if (!nominal || !line) return 'it is not routed yet; give it points';
  const taken = -startTrim(header, resolved);
  const say = sayIn(header.design.display);
  const [first] = nominal.straights;
  // Taken away past its end, the first leg would turn about and look sound.
  if (taken > 0 && first! >= 0 && taken > first! + STRAIGHT_TOLERANCE)
    return `the transition before it takes ${say(taken)} and its first straight is ${say(first!)} long; make the transition shorter`;
  return tubeObstacle(nominal, tube) ?? tubeObstacle(line, tube);
}

export function tubeParts(header: Header): Made {
  const parts: HeaderPart[] = [];
  const notMade: PartRemark[] = [];
  for (const resolved of header.runners) {
    const { runner, tube, start } = resolved;
    const id = `runner ${runner.id}`;
    const where = `runners/${runner.id}`;
    const line = tubeLine(header, resolved);
    const why = cutObstacle(header, resolved);
    if (!line || why) {
      notMade.push({ part: id, where, message: `It cannot be made, because ${why}.` });
      continue;
    }
    const { outsideDiameter, wall, material } = tube;
    const mesh = fromMesh(tubeSolid(line, { outsideDiameter, wall, up: start.up }), start);
    const volume = tubeVolume(line, tube);
    parts.push({
      id,
      kind: 'tube',
      name: 'tube',
      of: { kind: 'runner', id: runner.id },
      mesh,
      pose: start,
      volume,
      material,
      edges: new Float32Array(0),
    });
  }
  return { parts, notMade, warnings: [] };
}

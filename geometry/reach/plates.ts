/**
 * Flange plates as what tools from elsewhere meet: bars through the plate about each opening and each fastener, with the metal that
 * is left round them. What joins them is not told: a tool that comes between would meet tubes and nuts first. mm, design frame.
 */
import type { Flange } from '../../shared/design/types';
import { nutRoom } from '../../shared/stock/hexFasteners';
import { cylinderShape } from '../clearance/shapes';
import { onPlate, type PlateFrame, plateFrame, turnedOnPlate } from '../flange/plateFrame';
import { borderOf } from '../flange/practice';
import { openingDiscs } from '../flange/seats';
import type { Header, ResolvedPort } from '../header/resolve';
import { addScaled, distance } from '../vector';
import type { Solid } from './fixed';

export function platesOf(header: Header): { readonly flange: string; readonly solids: readonly Solid[] }[] {
  return (header.design.flanges ?? []).map((flange) => ({ flange: flange.id, solids: plateSolids(header, flange) }));
}

function plateSolids(header: Header, flange: Flange): Solid[] {
  const ports = flange.ports.flatMap((id) => header.ports.get(id) ?? []);
  if (ports.length === 0) return [];
  const one = flange.plates === 'separate' ? null : plateFrame(ports);
  const frameAt = (port: ResolvedPort): PlateFrame => one ?? plateFrame([port]);
  const border = borderOf(flange);
  const bars = [
    ...ports.flatMap((port) => {
      const frame = frameAt(port);
      return turnedOnPlate(frame, port.pose, openingDiscs(port.port.opening)).map((d) => ({
        frame,
        ...d,
        r: d.r + border,
      }));
    }),
    ...(flange.fasteners ?? []).map(({ position, thread, hole }) => {
      const nearest = ports.reduce((a, b) =>
        distance(b.port.position, position) < distance(a.port.position, position) ? b : a,
      );
      const frame = frameAt(nearest);
      const [x, y] = onPlate(frame, position);
      return { frame, x, y, r: nutRoom(thread, hole).washer / 2 };
    }),
  ];
  return bars.map(({ frame: { pose, axes }, x, y, r }) => {
    const face = addScaled(addScaled(pose.position, axes[0], x), axes[1], y);
    const shape = cylinderShape({ a: face, b: addScaled(face, pose.direction, -flange.thickness), radius: r });
    return { id: flange.id, shape };
  });
}

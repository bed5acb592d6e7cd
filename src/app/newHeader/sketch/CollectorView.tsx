/** A collector in one view: a cone from the circle around its inlets to its outlet, and an arrow the way it blows. */

import { type CollectorForm, type EngineForm, joinedFirst } from '../../../../shared/engine/form';
import { enclosing } from '../../../../shared/engine/sizing/joinedPipes';
import type { Vec3 } from '../../../../shared/vec3';
import type { Project } from './projection';

type Props = {
  readonly collector: CollectorForm;
  readonly form: EngineForm;
  readonly project: Project;
  readonly scale: number;
};

/** Of the arrow past the outlet, mm. */
const ARROW = 45;

export function CollectorView({ collector, form, project, scale }: Props) {
  const { position, axis, length, outletDiameter, cylinders } = collector;
  const inlets = Math.max(1, cylinders.length / (joinedFirst(form.arrangement) ?? 1));
  const entering = (form.secondary ?? form.primary).tube.outsideDiameter;
  const wide = (enclosing(entering, inlets) / 2) * scale;
  const narrow = (outletDiameter / 2) * scale;
  const size = Math.hypot(...axis) || 1;
  const on = (mm: number): Vec3 => [0, 1, 2].map((i) => position[i]! + (mm * axis[i]!) / size) as unknown as Vec3;
  const [[ax, ay], [bx, by], [cx, cy]] = [project(position), project(on(length)), project(on(length + ARROW))];
  const long = Math.hypot(bx - ax, by - ay);
  if (long < 2)
    return (
      <g className="sketch-collector">
        <circle cx={ax} cy={ay} r={wide} />
        <circle cx={ax} cy={ay} r={narrow} />
      </g>
    );
  const [nx, ny] = [-(by - ay) / long, (bx - ax) / long];
  const turn = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return (
    <g className="sketch-collector">
      <path
        d={`M${ax + nx * wide} ${ay + ny * wide}L${bx + nx * narrow} ${by + ny * narrow}L${bx - nx * narrow} ${by - ny * narrow}L${ax - nx * wide} ${ay - ny * wide}Z`}
      />
      <line className="sketch-flow" x1={bx} y1={by} x2={cx} y2={cy} />
      <path className="sketch-flow" d="M-7 -3.5 0 0-7 3.5" transform={`translate(${cx} ${cy}) rotate(${turn})`} />
    </g>
  );
}

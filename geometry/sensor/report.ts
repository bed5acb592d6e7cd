/** Sensors in their bungs: where they are, how they lean, and what room they have. mm, degrees. */
import type { Vec3 } from '../../shared/vec3';
import type { ToolSolid } from '../reach/report';

export type SensorRemark = { readonly fails: boolean; readonly message: string };

export type SensorEntry = {
  readonly id: string;
  /** Centre of the bung on the tube's surface, and the way out of it. */
  readonly at: Vec3;
  readonly axis: Vec3;
  /** Of the axis above horizontal, degrees; negative hangs down. */
  readonly lean: number;
  /** Along the flow to the first collector's outlet it comes to, or from the inlets of its own: mm, negative upstream. */
  readonly toCollector: number | null;
  /** Least gap of the sensor, and of its spanner, to anything, and to what; null where nothing is near. */
  readonly room: { readonly gap: number; readonly by: string } | null;
  readonly spanner: { readonly fits: boolean; readonly by: readonly string[] };
  readonly solids: readonly ToolSolid[];
  readonly remarks: readonly SensorRemark[];
};

/** Where the form's ports stand, cylinder by cylinder. mm, design frame. */
import type { Vec3 } from '../vec3';
import type { EngineForm } from './form';

export type PortPlace = { readonly cylinder: number; readonly bank: number; readonly position: Vec3 };

/** Bank by bank, in the order of each bank's list. */
export const portPlaces = ({ banks }: EngineForm): PortPlace[] =>
  banks.flatMap(({ cylinders, firstPort: [x, y, z], pitch }, bank) =>
    cylinders.map((cylinder, i) => ({ cylinder, bank, position: [x + i * pitch, y, z] as const })),
  );

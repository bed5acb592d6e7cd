/** A point or direction in millimetres (or unitless), right-handed: +X along the crankshaft, +Z up, +Y out of the head. */
export type Vec3 = readonly [x: number, y: number, z: number];

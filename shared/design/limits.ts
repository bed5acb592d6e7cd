/**
 * How large a design may be. Far above any real header, low enough that a hostile or broken file is refused at once
 * instead of hanging the program. mm and degrees. A limit met in earnest may be raised; lowering one breaks old files.
 */

/** Largest file read, in bytes (and characters of text). A routed six-cylinder design is about 12 kB. */
export const MAX_DESIGN_BYTES = 8 * 1024 * 1024;
/** Objects within objects; the contract's own fields need six. */
export const MAX_DEPTH = 32;
/** Values of every kind in one document, unknown fields included. */
export const MAX_VALUES = 200_000;

export const MAX_PORTS = 64;
export const MAX_FLANGES = 64;
export const MAX_MERGES = 64;
export const MAX_INLETS = 16;
export const MAX_RUNNERS = 128;
export const MAX_POINTS = 100;
export const MAX_SURROUNDINGS = 2000;
export const MAX_FASTENERS = 500;
export const MAX_SERVICE = 200;
export const MAX_SENSORS = 64;
/** Stretches of one runner that are wrapped. */
export const MAX_WRAPPED = 50;
/** Bars, and bends, of a workshop's shelf; test bends of a die; prices. */
export const MAX_STOCK = 500;
export const MAX_TEST_BENDS = 50;
/** Corners of a flange's outline: a traced one has hundreds. */
export const MAX_OUTLINE = 2000;
/** Entries of `tubes`, `tooling` and `groups`, and of `otherRadii`. */
export const MAX_ENTRIES = 64;
export const MAX_CYLINDERS = 64;
/** Rows of a measured lift curve (two a degree), of a flow bench's table, of a measured torque curve. */
export const MAX_LIFTS = 1500;
export const MAX_FLOWS = 200;
export const MAX_MEASURED = 500;

/** Farthest coordinate and greatest length: a hundred metres. */
export const MAX_LENGTH = 100_000;
/** Longest text in a title or note. */
export const MAX_TEXT = 1000;
/** Longest id, by the contract. */
export const MAX_ID = 64;

/** A vector shorter than this has no direction. */
export const LEAST_VECTOR = 1e-9;
/** One longer than this overflows when multiplied. */
export const MAX_VECTOR = 1e9;
/** Sine of the least angle between an `up` and what it is projected square to. */
export const LEAST_SINE = 1e-6;
/** Neighbouring points nearer than this are one point, mm. */
export const LEAST_LEG = 1e-6;

/** Refusals listed in one error; further ones are only counted. */
export const MAX_PROBLEMS = 100;

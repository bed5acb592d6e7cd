/**
 * How large a rig may be, and which of its numbers are absurd. Far beyond any rig in earnest, low enough that a mistyped one is
 * refused at once instead of running for a day. Dimensionless rigs (gas constant 1, pressures of 0.01 and 1000) are as welcome as SI,
 * so states are judged against each other and against the gas wherever that can be done. SI units.
 */
import type { Range } from '../../../shared/design/ranges';
import { HIGHEST } from '../equations/mixture';

/** Of a document as UTF-8, as of a design. */
export const MAX_RIG_BYTES = 8 * 1024 * 1024;
export const MAX_PIPES = 1000;
export const MAX_ENDS = 2 * MAX_PIPES;
export const MAX_PROBES = 1000;
/** Places of one junction. */
export const MAX_PLACES = 64;
/** Lines of a table of diameters, areas or initial states. */
export const MAX_LINES = 20_000;
export const MAX_COMPONENTS = 8;
export const MAX_ID = 64;

/** A pipe of one cell is followed without slopes; shorter than a cell it is none. */
export const LEAST_CELLS = 1;
export const MAX_CELLS = 500_000;
/** Rows times columns that the output may have: about 100 MB of text. */
export const MAX_OUTPUT = 5_000_000;
/** Cells times steps, by the waves that the rig begins with: about a day on one core. */
export const MAX_WORK = 1e12;

/** No real gas is above 5/3; solutions for 2 and 3 are in use for comparison. */
export const GAMMA: Range = { least: 1.001, most: 3 };
export const GAS_CONSTANT: Range = { least: 0, most: 1e6, above: true };
export const PRESSURE: Range = { least: 0, most: 1e12, above: true };
export const TEMPERATURE: Range = { least: 0, most: 1e9, above: true };
export const VELOCITY: Range = { least: -1e9, most: 1e9 };
export const PIPE_LENGTH: Range = { least: 0, most: 1e5, above: true };
/** A micrometre: the area of anything less vanishes. */
export const DIAMETER: Range = { least: 1e-6, most: 1e3 };
export const POSITION: Range = { least: 0, most: 1e5 };
/** Fanning: fully rough pipes are below 0.03. */
export const FRICTION: Range = { least: 0, most: 1 };
export const ROUGHNESS: Range = { least: 0, most: 1e3 };
export const VOLUME: Range = { least: 0, most: 1e9, above: true };
export const AREA: Range = { least: 0, most: 1e6 };
export const INSTANT: Range = { least: -1e6, most: 1e6 };
export const DURATION: Range = { least: 0, most: 1e6, above: true };
export const SAMPLE: Range = { least: 0, most: 1e6 };
export const SHARE: Range = { least: 0, most: 1, above: true };
/** Radii of the opening; theory has 0.61 and 0.82. */
export const END_CORRECTION: Range = { least: 0, most: 5 };
export const ANGLE: Range = { least: -360, most: 360 };
export const COMPONENT: Range = { least: -1e9, most: 1e9 };

/** A shorter direction is none. */
export const LEAST_DIRECTION = 1e-9;
/** Gas constants from here on are taken for J/(kg K), and their temperatures for K; below, for a dimensionless rig. */
export const REAL_GAS_CONSTANT = 30;
/** K: beyond it nothing that a perfect gas says is true. */
export const HOTTEST = 10_000;
/** K: as far as our table of substances goes. */
export const HOTTEST_MIXTURE = HIGHEST;
/** K: heats are held as they are at 200 K below that, which is nearly so down to here; there is no such gas in a pipe much below. */
export const COLDEST_MIXTURE = 100;
/** Velocity beside the fastest sound of the rig. */
export const MOST_MACH = 50;
/** Lowest pressure beside the highest. */
export const LEAST_RATIO = 1e-12;
/** Places are the same, and fractions make up the whole, to this share: sums of decimals are not exact. */
export const SAME = 1e-9;

/**
 * Published and recomputed values for what happens at a pipe's end, each with its source. SI units unless they are ratios.
 * "Recomputed": worked out independently of this project's code, and where a printed value exists, agreeing with it.
 */

/** NACA 1135 and shock-tube relations (Gaydon & Hurle); recomputed. γ = 1.4; 1 ahead of the shock, 2 behind it, 5 behind the reflected one. */
export const wallReflection = [
  { mach: 1.05, p2p1: 1.11958, p5p2: 1.11757, u2a1: 0.0813492 },
  { mach: 1.1, p2p1: 1.245, p5p2: 1.23671, u2a1: 0.159091 },
  { mach: 1.2, p2p1: 1.51333, p5p2: 1.47826, u2a1: 0.305556 },
  { mach: 1.3, p2p1: 1.805, p5p2: 1.72197, u2a1: 0.442308 },
  { mach: 1.47, p2p1: 2.35438, p5p2: 2.13482, u2a1: 0.658107 },
  { mach: 1.5, p2p1: 2.45833, p5p2: 2.2069, u2a1: 0.694444 },
] as const;

/** G. Bar-Meir, Fundamentals of Compressible Fluid Mechanics (open textbook), moving-shock examples; read in the source. γ = 1.4. */
export const closedValve = { flowMach: 2.15, pressure: 9.796, temperature: 2.589, tolerance: 2e-4 } as const;
export const openedValve = {
  pressure: 2,
  shockMach: 1.3628,
  temperature: 1.2308,
  density: 1.625,
  tolerance: 1e-4,
} as const;

/** Riemann invariant (Earnshaw 1860; Blair 1996, ch. 2); recomputed. Velocity over the speed of sound at rest. */
export const rarefactions = [
  { gamma: 1.4, pressure: 0.6, velocity: 0.35188 },
  { gamma: 1.4, pressure: 0.8, velocity: 0.156875 },
  { gamma: 1.35, pressure: 0.6, velocity: 0.366133 },
  { gamma: 1.35, pressure: 0.8, velocity: 0.162924 },
] as const;

/** NACA 1135, eqs. 43–47; Heywood 1988, app. C; recomputed. Flow: ṁ √(R T0) / (A p0). */
export const choked = [
  { gamma: 1.4, pressure: 0.528282, flow: 0.684731 },
  { gamma: 1.35, pressure: 0.536851, flow: 0.676145 },
  { gamma: 1.33, pressure: 0.540364, flow: 0.672628 },
  { gamma: 1.3, pressure: 0.545728, flow: 0.667262 },
  { gamma: 1.25, pressure: 0.554929, flow: 0.658065 },
] as const;

/** Heywood 1988, app. C, eqs. C.8 and C.9 (numbers of the equations from memory); recomputed. Effective area 1e-4 m². */
export const orifices = [
  { gamma: 1.4, gasConstant: 287.05, pressure: 101325, temperature: 293.15, behind: 100000, mass: 0.00560911 },
  { gamma: 1.4, gasConstant: 287.05, pressure: 101325, temperature: 293.15, behind: 90000, mass: 0.0154945 },
  { gamma: 1.4, gasConstant: 287.05, pressure: 101325, temperature: 293.15, behind: 50000, mass: 0.0239174 },
  { gamma: 1.33, gasConstant: 287, pressure: 4e5, temperature: 1200, behind: 1.1e5, mass: 0.0458462 },
] as const;

/** Pressure reflected at a change of area: Kinsler & Frey; recomputed. Small amplitude. */
export const areaChanges = [
  { ratio: 0.25, reflected: 0.6 },
  { ratio: 0.5, reflected: 0.333333 },
  { ratio: 0.8, reflected: 0.111111 },
  { ratio: 1, reflected: 0 },
  { ratio: 1.5, reflected: -0.2 },
  { ratio: 2, reflected: -0.333333 },
  { ratio: 4, reflected: -0.6 },
  { ratio: 9, reflected: -0.8 },
] as const;

/** Junction at one pressure, small amplitude, incident in the first pipe (Benson 1982); recomputed. */
export const junctions = [
  { areas: [1, 1, 1], transmitted: 0.666667 },
  { areas: [1, 1, 2], transmitted: 0.5 },
  { areas: [1, 1, 1.4], transmitted: 0.588235 },
  { areas: [1, 1, 1, 1, 1], transmitted: 0.4 },
  { areas: [1, 1, 1, 1, 2], transmitted: 0.333333 },
  { areas: [1, 1, 1, 1, 4], transmitted: 0.25 },
  { areas: [2, 1, 1, 1, 1], transmitted: 0.666667 },
  { areas: [1, 0.25, 1], transmitted: 0.888889 },
] as const;

/**
 * A shock from the first pipe into gas at rest, junction at one pressure: mass, stagnation enthalpy and pressure solved exactly,
 * recomputed; theory, no experiment. γ = 1.4, 293.15 K, 101325 Pa; ratios to that pressure.
 */
export const shockIntoJunction = [
  { mach: 1.01, areas: [1, 1, 1], junction: 1.01558, arriving: 7.58942, leaving: 3.79499 },
  { mach: 1.01, areas: [1, 0.5], junction: 1.03137, arriving: 3.79501, leaving: 7.58946 },
  { mach: 1.05, areas: [1, 1, 1, 1, 1], junction: 1.04657, arriving: 44.644, leaving: 11.1959 },
  { mach: 1.05, areas: [1, 0.5], junction: 1.16197, arriving: 18.6371, leaving: 37.2114 },
  { mach: 1.1, areas: [1, 1, 2], junction: 1.11767, arriving: 81.6918, leaving: 27.4955 },
  { mach: 1.1, areas: [1, 2], junction: 1.15892, arriving: 72.6388, leaving: 36.5523 },
  { mach: 1.2, areas: [1, 1, 1], junction: 1.32725, arriving: 138.721, leaving: 70.9014 },
  { mach: 1.2, areas: [1, 1, 1, 1, 2], junction: 1.15767, arriving: 173.317, leaving: 36.281 },
  { mach: 1.2, areas: [1, 0.5], junction: 1.72153, arriving: 70.996, leaving: 139.048 },
] as const;

/** A shock that runs into half the area, connected by isentropic flow (cf. Rudinger 1955): solved exactly, recomputed. Same gas. */
export const shockIntoHalf = [
  { mach: 1.01, wide: 1.03146, narrow: 1.0312, arriving: 3.77371, leaving: 7.54877 },
  { mach: 1.1, wide: 1.34806, narrow: 1.32119, arriving: 34.3669, leaving: 69.7295 },
  { mach: 1.2, wide: 1.78015, narrow: 1.66562, arriving: 62.0871, leaving: 130.215 },
] as const;

/**
 * Several substances of our table, mixed by mass; pressures and energies add up as those of ideal gases. Each one's cv is linear between
 * even nodes of temperature and its energy the exact integral, 0 at 0 K, so that energy is a parabola in each interval and
 * temperature follows from it in closed form: the same whatever the first guess. Everything is linear in the fractions, so one
 * that rounding put below 0 or above 1 does no more harm than rounding does. SI units.
 */
import {
  type CellState,
  CONSERVED,
  type FaceState,
  GAMMA,
  type Gas,
  INTERNAL,
  PRESSURE,
  SIDE,
  SIDE_GAMMA,
  STATE,
  VELOCITY,
} from './gas';
import { substance } from './substances';

/** K. At 12.5 K the parabolas are within 1e-4 of the polynomials' cv. */
const STEP = 12.5;
/** cv is held constant below, down to 0 K, and above: far beyond any gas in a pipe. */
const LOWEST = 200;
export const HIGHEST = 4000;
const LAST = HIGHEST / STEP;

/** Entries of a node for one component: energy, cv, rise of cv per K. Those of carried components are differences to the first. */
const WIDTH = 3;

type Table = {
  readonly carried: number;
  /** [(node × components + component) × WIDTH] */
  readonly nodes: Float64Array;
  /** The first component's gas constant, then what each carried one has more. */
  readonly constants: Float64Array;
};

/** @param components names of `substances.ts`, each once; the first makes up the rest */
export function mixture(components: readonly string[]): Gas {
  const table = tabulate(components);
  return {
    components: [...components],
    carried: table.carried,
    decode: (cells, from, to) => (table.carried === 1 ? decodeTwo : decode)(table, cells, from, to),
    faces: (sides, from, to) => (table.carried === 1 ? facesTwo : faces)(table, sides, from, to),
    gasConstant: (fractions, at, stride) => constantOf(table, fractions, at, stride),
    gamma: (temperature, fractions, at, stride) =>
      1 + constantOf(table, fractions, at, stride) / heatAt(table, temperature, fractions, at, stride),
    enthalpy: (temperature, fractions, at, stride) =>
      energyAt(table, temperature, fractions, at, stride) + constantOf(table, fractions, at, stride) * temperature,
    temperatureOfEnthalpy: (enthalpy, fractions, at, stride) =>
      temperatureOf(table, enthalpy, constantOf(table, fractions, at, stride), 300, fractions, at, stride),
  };
}

function tabulate(components: readonly string[]): Table {
  const substances = components.map(substance);
  const row = WIDTH * components.length;
  const nodes = new Float64Array((LAST + 1) * row);
  substances.forEach(({ heat }, k) => {
    const heatOf = (node: number) => heat(Math.min(Math.max(node * STEP, LOWEST), HIGHEST));
    let energy = 0;
    for (let node = 0; node <= LAST; node++) {
      const at = node * row + WIDTH * k;
      const [here, next] = [heatOf(node), heatOf(node + 1)];
      nodes[at] = energy;
      nodes[at + 1] = here;
      nodes[at + 2] = (next - here) / STEP;
      energy += 0.5 * (here + next) * STEP;
    }
  });
  for (let node = 0; node <= LAST; node++)
    for (let i = WIDTH; i < row; i++) nodes[node * row + i]! -= nodes[node * row + (i % WIDTH)]!;
  const first = substances[0]!.gasConstant;
  const constants = Float64Array.from(substances, ({ gasConstant }, k) =>
    k === 0 ? gasConstant : gasConstant - first,
  );
  return { carried: components.length - 1, nodes, constants };
}

/** The interval that a temperature is in; the first or last one for what is below, above or not a number. */
function nodeOf(temperature: number): number {
  const node = temperature * (1 / STEP);
  return node < LAST ? (node > 0 ? node | 0 : 0) : LAST;
}

function constantOf(table: Table, fractions: Float64Array, at: number, stride: number): number {
  const { carried, constants } = table;
  let sum = constants[0]!;
  for (let k = 1; k <= carried; k++) sum += constants[k]! * fractions[(k - 1) * stride + at]!;
  return sum;
}

/** One entry of a node, mixed. */
function mixed(table: Table, node: number, entry: number, fractions: Float64Array, at: number, stride: number): number {
  const { carried, nodes } = table;
  let place = node * WIDTH * (carried + 1) + entry;
  let sum = nodes[place]!;
  for (let k = 0; k < carried; k++) {
    place += WIDTH;
    sum += nodes[place]! * fractions[k * stride + at]!;
  }
  return sum;
}

function heatAt(table: Table, temperature: number, fractions: Float64Array, at: number, stride: number): number {
  const node = nodeOf(temperature);
  const beyond = temperature - node * STEP;
  return mixed(table, node, 1, fractions, at, stride) + mixed(table, node, 2, fractions, at, stride) * beyond;
}

function energyAt(table: Table, temperature: number, fractions: Float64Array, at: number, stride: number): number {
  const node = nodeOf(temperature);
  const beyond = temperature - node * STEP;
  const heat = mixed(table, node, 1, fractions, at, stride);
  const rise = mixed(table, node, 2, fractions, at, stride);
  return mixed(table, node, 0, fractions, at, stride) + beyond * (heat + 0.5 * rise * beyond);
}

/**
 * Where energy + `constant` × temperature is `wanted`: with R that is enthalpy, with 0 energy. Jumps as the heat at a node tells,
 * at last node by node, until the interval holds what is wanted; then the parabola's root, in the form that loses no digits.
 */
function temperatureOf(
  table: Table,
  wanted: number,
  constant: number,
  guess: number,
  fractions: Float64Array,
  at: number,
  stride: number,
): number {
  let node = nodeOf(guess);
  for (let jumps = 0; ; jumps++) {
    const start = node * STEP;
    const heat = mixed(table, node, 1, fractions, at, stride) + constant;
    const rise = mixed(table, node, 2, fractions, at, stride);
    const missing = wanted - mixed(table, node, 0, fractions, at, stride) - constant * start;
    let jump = 0;
    if (missing < 0 && node > 0) jump = Math.floor(missing / (heat * STEP));
    else if (missing >= STEP * (heat + 0.5 * rise * STEP) && node < LAST)
      jump = Math.max(1, Math.floor(missing / (heat * STEP)));
    // Rounding can put what is wanted outside of both intervals beside a node: so an end to it.
    if (jump === 0 || jumps > 2 * LAST)
      return start + (2 * missing) / (heat + Math.sqrt(heat * heat + 2 * rise * missing));
    if (jumps > 8) jump = jump > 0 ? 1 : -1;
    node = Math.min(Math.max(node + jump, 0), LAST);
  }
}

function decode(table: Table, cells: CellState, from: number, to: number): number {
  const { conserved, partial, temperature, fractions, stride } = cells;
  const { carried } = table;
  for (let i = from; i < to; i++) {
    const c = CONSERVED * i;
    const rho = conserved[c]!;
    const per = 1 / rho;
    const u = conserved[c + 1]! * per;
    const internal = conserved[c + 2]! * per - 0.5 * u * u;
    // Written so that what is not a number fails too.
    if (!(rho > 0 && internal > 0 && internal < Infinity)) return i;
    for (let k = 0; k < carried; k++) fractions[k * stride + i] = partial[k * stride + i]! * per;
    const kelvin = temperatureOf(table, internal, 0, temperature[i]!, fractions, i, stride);
    const constant = constantOf(table, fractions, i, stride);
    const p = rho * constant * kelvin;
    if (!(p > 0 && p < Infinity)) return i;
    temperature[i] = kelvin;
    write(cells, i, rho, u, p, 1 + constant / heatAt(table, kelvin, fractions, i, stride));
  }
  return -1;
}

function write({ state }: CellState, i: number, rho: number, u: number, p: number, gamma: number): void {
  const s = STATE * i;
  state[s] = rho;
  state[s + VELOCITY] = u;
  state[s + PRESSURE] = p;
  state[s + GAMMA] = gamma;
}

/** `decode` for two components, the commonest mixture: all entries of a node are read once, which takes half the time. */
function decodeTwo(table: Table, cells: CellState, from: number, to: number): number {
  const { conserved, partial, temperature, fractions, stride } = cells;
  const { nodes, constants } = table;
  const [first, more] = [constants[0]!, constants[1]!];
  for (let i = from; i < to; i++) {
    const c = CONSERVED * i;
    const rho = conserved[c]!;
    const per = 1 / rho;
    const u = conserved[c + 1]! * per;
    const internal = conserved[c + 2]! * per - 0.5 * u * u;
    if (!(rho > 0 && internal > 0 && internal < Infinity)) return i;
    const share = partial[i]! * per;
    fractions[i] = share;
    const node = nodeOf(temperature[i]!);
    const at = 2 * WIDTH * node;
    const heat = nodes[at + 1]! + share * nodes[at + 4]!;
    const rise = nodes[at + 2]! + share * nodes[at + 5]!;
    const missing = internal - (nodes[at]! + share * nodes[at + 3]!);
    const constant = first + share * more;
    let kelvin = 0;
    let here = 0;
    if ((missing >= 0 || node === 0) && (missing < STEP * (heat + 0.5 * rise * STEP) || node === LAST)) {
      // As at the end of `temperatureOf`; the root is cv there.
      here = Math.sqrt(heat * heat + 2 * rise * missing);
      kelvin = node * STEP + (2 * missing) / (heat + here);
    } else {
      kelvin = temperatureOf(table, internal, 0, temperature[i]!, fractions, i, stride);
      here = heatAt(table, kelvin, fractions, i, stride);
    }
    const p = rho * constant * kelvin;
    if (!(p > 0 && p < Infinity)) return i;
    temperature[i] = kelvin;
    write(cells, i, rho, u, p, 1 + constant / here);
  }
  return -1;
}

function faces(table: Table, { state, fractions, stride }: FaceState, from: number, to: number): void {
  for (let i = from; i < to; i++) {
    const s = SIDE * i;
    const rho = state[s]!;
    const constant = constantOf(table, fractions, i, stride);
    const kelvin = state[s + PRESSURE]! / (rho * constant);
    state[s + INTERNAL] = rho * energyAt(table, kelvin, fractions, i, stride);
    state[s + SIDE_GAMMA] = 1 + constant / heatAt(table, kelvin, fractions, i, stride);
  }
}

/** `faces` for two components. */
function facesTwo(table: Table, { state, fractions }: FaceState, from: number, to: number): void {
  const { nodes, constants } = table;
  const [first, more] = [constants[0]!, constants[1]!];
  for (let i = from; i < to; i++) {
    const s = SIDE * i;
    const rho = state[s]!;
    const share = fractions[i]!;
    const constant = first + share * more;
    const kelvin = state[s + PRESSURE]! / (rho * constant);
    const node = nodeOf(kelvin);
    const beyond = kelvin - node * STEP;
    const at = 2 * WIDTH * node;
    const heat = nodes[at + 1]! + share * nodes[at + 4]!;
    const gained = beyond * (nodes[at + 2]! + share * nodes[at + 5]!);
    state[s + INTERNAL] = rho * (nodes[at]! + share * nodes[at + 3]! + beyond * (heat + 0.5 * gained));
    state[s + SIDE_GAMMA] = 1 + constant / (heat + gained);
  }
}

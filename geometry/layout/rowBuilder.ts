/**
 * Gathers the linearised rules as rows of the quadratic program. A rule is a value that must be ≥ 0 (or = 0) in mm, with
 * its gradient over the unknowns; unknowns are scaled by how dear they are to move, so that distance is plain length.
 */
import type { Rows } from './leastDistanceProgram';

/** What a row's key says of its rule: paths as in a problem's `where`. */
export type RuleKey = { readonly rule: string; readonly where: string; readonly other: string };

/** Missing a rule by less than this is rounding, mm. */
const MISSED = 1e-3;

/**
 * Writes a row's key from what it is of: most rows come and go without anyone asking for theirs, so keys are only written
 * when asked for.
 */
export type KeyOf<A, B> = (a: A, b: B, i: number, j: number) => string;

const asGiven: KeyOf<string, null> = (key) => key;

export class RowBuilder {
  private gradients: Float64Array;
  private values = new Float64Array(64);
  private slacks = new Float64Array(64);
  private equalities = new Uint8Array(64);
  private keyOf: KeyOf<never, never>[] = [];
  private ofA: unknown[] = [];
  private ofB: unknown[] = [];
  private numbers = new Int32Array(128);
  private known: string[] | null = null;
  private used = 0;

  constructor(
    private unknowns: number,
    private dearness: Float64Array,
  ) {
    this.gradients = new Float64Array(64 * unknowns);
  }

  /** Empties it for other unknowns, in the same memory. */
  begin(unknowns: number, dearness: Float64Array): void {
    this.clear();
    this.unknowns = unknowns;
    this.dearness = dearness;
  }

  clear(): void {
    this.gradients.fill(0, 0, this.used * this.unknowns);
    this.used = 0;
    this.known = null;
  }

  get count(): number {
    return this.used;
  }

  /** Of all rows, written when first asked for; good until the next row. */
  get keys(): readonly string[] {
    if (this.known) return this.known;
    const { keyOf, ofA, ofB, numbers } = this;
    const keys: string[] = [];
    for (let i = 0; i < this.used; i++)
      keys.push(keyOf[i]!(ofA[i] as never, ofB[i] as never, numbers[2 * i]!, numbers[2 * i + 1]!));
    this.known = keys;
    return keys;
  }

  /**
   * Opens a row; the caller then adds its gradient into `array` from the offset returned.
   * @param key `rule|where|other|part`: names the rule from one step to the next, so that what pressed last time is tried
   *   first, and to people, when it is what stops a design
   * @param slack how far inside its limit the value aims: missing the aim by less breaks no rule
   */
  add(value: number, isEquality: boolean, key: string, slack = 0): number {
    return this.addOf(value, isEquality, slack, asGiven, key, null);
  }

  /** The same with a key that is written from `a`, `b`, `i` and `j` when it is asked for. */
  addOf<A, B>(value: number, isEquality: boolean, slack: number, key: KeyOf<A, B>, a: A, b: B, i = 0, j = 0): number {
    const row = this.used++;
    const offset = row * this.unknowns;
    if (offset + this.unknowns > this.gradients.length) {
      const larger = new Float64Array(2 * this.gradients.length + this.unknowns);
      larger.set(this.gradients);
      this.gradients = larger;
    }
    if (row === this.values.length) this.grow();
    this.known = null;
    this.values[row] = value;
    this.equalities[row] = isEquality ? 1 : 0;
    this.slacks[row] = slack;
    this.keyOf[row] = key;
    this.ofA[row] = a;
    this.ofB[row] = b;
    this.numbers[2 * row] = i;
    this.numbers[2 * row + 1] = j;
    return offset;
  }

  private grow(): void {
    const larger = 2 * this.values.length;
    const [values, slacks] = [this.values, this.slacks];
    this.values = new Float64Array(larger);
    this.values.set(values);
    this.slacks = new Float64Array(larger);
    this.slacks.set(slacks);
    const { equalities, numbers } = this;
    this.equalities = new Uint8Array(larger);
    this.equalities.set(equalities);
    this.numbers = new Int32Array(2 * larger);
    this.numbers.set(numbers);
  }

  /** A row that depends on one unknown alone. */
  addSingle<A>(
    value: number,
    isEquality: boolean,
    key: KeyOf<A, null>,
    a: A,
    i: number,
    unknown: number,
    slope: number,
  ): void {
    const offset = this.addOf(value, isEquality, 0, key, a, null, i);
    this.gradients[offset + unknown] = slope;
  }

  /** What a rule is off by, mm: signed for an equality, else 0 or how far it falls short of its aim (negative). */
  residual(i: number): number {
    return this.equalities[i] ? this.values[i]! : Math.min(0, this.values[i]!);
  }

  value(i: number): number {
    return this.values[i]!;
  }

  /** Makes a row count `weight` times as much. */
  weigh(i: number, weight: number): void {
    const { unknowns } = this;
    this.values[i] = this.values[i]! * weight;
    for (let k = i * unknowns; k < (i + 1) * unknowns; k++) this.gradients[k] = this.gradients[k]! * weight;
  }

  isEquality(i: number): boolean {
    return this.equalities[i] === 1;
  }

  /** Fetch anew after every `add`: it may have grown. */
  get array(): Float64Array {
    return this.gradients;
  }

  /** Rules that stand at their limit or past it, lengths left out: what stops a header that cannot go further. */
  atLimit(): RuleKey[] {
    return this.named((i) => !this.equalities[i] && this.values[i]! <= this.slacks[i]!);
  }

  /** Rules that do not hold, the worst missed first. */
  missed(): RuleKey[] {
    const worst = [...this.keys.keys()].sort((i, k) => this.missOf(k) - this.missOf(i));
    return this.named((i) => this.missOf(i) > MISSED, worst);
  }

  private missOf(i: number): number {
    return this.equalities[i] ? Math.abs(this.values[i]!) : Math.max(0, -this.values[i]! - this.slacks[i]!);
  }

  private named(which: (row: number) => boolean, order: Iterable<number> = this.keys.keys()): RuleKey[] {
    const found = new Map<string, RuleKey>();
    for (const i of order) {
      if (!which(i)) continue;
      const [rule = '', where = '', other = ''] = this.keys[i]!.split('|');
      found.set(`${rule}|${where}|${other}`, { rule, where, other });
    }
    return [...found.values()];
  }

  /** Sum of squares and greatest of what the rules are missed by, mm. */
  violation(): { squares: number; greatest: number } {
    let squares = 0;
    let greatest = 0;
    for (let i = 0; i < this.used; i++) {
      const miss = this.missOf(i);
      squares += miss * miss;
      greatest = Math.max(greatest, miss);
    }
    return { squares, greatest };
  }

  /** The rows in scaled unknowns y = dearness·(x − target), linearised about `y`. */
  rows(y: Float64Array): Rows {
    const { count, unknowns, gradients, dearness } = this;
    const bounds = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      let along = 0;
      for (let k = 0; k < unknowns; k++) {
        const g = gradients[i * unknowns + k]! / dearness[k]!;
        gradients[i * unknowns + k] = g;
        along += g * y[k]!;
      }
      bounds[i] = along - this.values[i]!;
    }
    return { count, columns: unknowns, gradients, bounds, isEquality: this.equalities.slice(0, count) };
  }
}

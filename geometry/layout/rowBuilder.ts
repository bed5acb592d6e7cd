/**
 * Gathers the linearised rules as rows of the quadratic program. A rule is a value that must be ≥ 0 (or = 0) in mm, with
 * its gradient over the unknowns; unknowns are scaled by how dear they are to move, so that distance is plain length.
 */
import type { Rows } from './leastDistanceProgram';

/** What a row's key says of its rule: paths as in a problem's `where`. */
export type RuleKey = { readonly rule: string; readonly where: string; readonly other: string };

/** Missing a rule by less than this is rounding, mm. */
const MISSED = 1e-3;

export class RowBuilder {
  private gradients: Float64Array;
  private values: number[] = [];
  private equalities: number[] = [];
  private slacks: number[] = [];
  readonly keys: string[] = [];

  constructor(
    private readonly unknowns: number,
    private readonly dearness: Float64Array,
  ) {
    this.gradients = new Float64Array(64 * unknowns);
  }

  clear(): void {
    this.gradients.fill(0, 0, this.count * this.unknowns);
    this.values.length = 0;
    this.equalities.length = 0;
    this.slacks.length = 0;
    this.keys.length = 0;
  }

  get count(): number {
    return this.values.length;
  }

  /**
   * Opens a row; the caller then adds its gradient into `array` from the offset returned.
   * @param key `rule|where|other|part`: names the rule from one step to the next, so that what pressed last time is tried
   *   first, and to people, when it is what stops a design
   * @param slack how far inside its limit the value aims: missing the aim by less breaks no rule
   */
  add(value: number, isEquality: boolean, key: string, slack = 0): number {
    const offset = this.count * this.unknowns;
    if (offset + this.unknowns > this.gradients.length) {
      const larger = new Float64Array(2 * this.gradients.length + this.unknowns);
      larger.set(this.gradients);
      this.gradients = larger;
    }
    this.values.push(value);
    this.equalities.push(isEquality ? 1 : 0);
    this.keys.push(key);
    this.slacks.push(slack);
    return offset;
  }

  /** A row that depends on one unknown alone. */
  addSingle(value: number, isEquality: boolean, key: string, unknown: number, slope: number): void {
    const offset = this.add(value, isEquality, key);
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
    for (let i = 0; i < this.values.length; i++) {
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
    return { count, columns: unknowns, gradients, bounds, isEquality: Uint8Array.from(this.equalities) };
  }
}

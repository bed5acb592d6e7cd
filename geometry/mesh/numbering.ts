/**
 * Numbers triples of whole numbers in the order in which they are first met: cells of a grid, edges, triangles. A table of
 * plain arrays (open addressing), since millions of them in a Map would take hundreds of megabytes.
 */
export class Numbering {
  count = 0;
  private triples: Int32Array = new Int32Array(3 * 1024);
  /** 0 where nothing is, else the number and one. */
  private table: Uint32Array = new Uint32Array(4096);

  /** The triple's number; a new one, `count` as it was, where it is met for the first time. */
  of(a: number, b: number, c: number): number {
    const at = this.seek(a, b, c);
    const held = this.table[at]!;
    if (held > 0) return held - 1;
    if (3 * this.count === this.triples.length) {
      const more = new Int32Array(2 * this.triples.length);
      more.set(this.triples);
      this.triples = more;
    }
    const own = this.count++;
    this.triples[3 * own] = a;
    this.triples[3 * own + 1] = b;
    this.triples[3 * own + 2] = c;
    this.table[at] = own + 1;
    if (2 * this.count > this.table.length) this.grow();
    return own;
  }

  /** Whether the triple has been met; it is not numbered by being asked about. */
  has(a: number, b: number, c: number): boolean {
    return this.table[this.seek(a, b, c)]! > 0;
  }

  private seek(a: number, b: number, c: number): number {
    const { table, triples } = this;
    const mask = table.length - 1;
    let h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b) ^ Math.imul(c, 0xc2b2ae35);
    h ^= h >>> 15;
    h = Math.imul(h, 0x2c1b3c6d);
    h ^= h >>> 13;
    for (let at = h & mask; ; at = (at + 1) & mask) {
      const held = table[at]!;
      if (held === 0) return at;
      const o = 3 * (held - 1);
      if (triples[o] === a && triples[o + 1] === b && triples[o + 2] === c) return at;
    }
  }

  private grow(): void {
    this.table = new Uint32Array(2 * this.table.length);
    for (let n = 0; n < this.count; n++) {
      const o = 3 * n;
      this.table[this.seek(this.triples[o]!, this.triples[o + 1]!, this.triples[o + 2]!)] = n + 1;
    }
  }
}

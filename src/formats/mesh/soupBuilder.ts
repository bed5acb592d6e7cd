/** Triangles gathered one by one while nobody knows how many will come: in pieces, joined at the end. */
import type { TriangleSoup } from '../../../geometry';
import { MOST_TRIANGLES, tooMany } from './meshError';

/** Triangles a piece. */
const PIECE = 65_536;

export class SoupBuilder {
  count = 0;
  private readonly pieces: Float32Array[] = [];
  private own = new Float32Array(9 * PIECE);
  private length = 0;

  /** @param from numbers, three a corner; @param a, b, c the corners' numbers in it */
  add(from: ArrayLike<number>, a: number, b: number, c: number): void {
    if (this.length === this.own.length) {
      this.pieces.push(this.own);
      this.own = new Float32Array(9 * PIECE);
      this.length = 0;
    }
    if (++this.count > MOST_TRIANGLES) throw tooMany(this.count);
    const { own, length: o } = this;
    for (let k = 0; k < 3; k++) {
      own[o + k] = from[3 * a + k]!;
      own[o + 3 + k] = from[3 * b + k]!;
      own[o + 6 + k] = from[3 * c + k]!;
    }
    this.length += 9;
  }

  soup(): TriangleSoup {
    const soup = new Float32Array(9 * this.count);
    this.pieces.forEach((piece, i) => void soup.set(piece, 9 * PIECE * i));
    soup.set(this.own.subarray(0, this.length), 9 * PIECE * this.pieces.length);
    return soup;
  }
}

/** Numbers that come one by one, in memory that doubles. */
export class Numbers {
  length = 0;
  values = new Float32Array(3 * 4096);

  push(value: number): void {
    if (this.length === this.values.length) {
      const more = new Float32Array(2 * this.values.length);
      more.set(this.values);
      this.values = more;
    }
    this.values[this.length++] = value;
  }
}

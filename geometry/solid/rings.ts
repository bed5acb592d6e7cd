/** Triangles of a hollow solid that is swept or lofted: what its vertices are is not known here. */

/**
 * A hollow solid out of rings of vertices that run counter-clockwise seen against their way along: all rings of its outside, then
 * as many of its bore. Outer skin, bore and the two annular ends; triangles that a stand-in has closed up are left out.
 * @param inner the bore's first vertex
 * @param standIn for each vertex the one that stands for it
 */
export function connectRings(rings: number, sides: number, inner: number, standIn: Uint32Array): Uint32Array {
  const triangles = new Uint32Array(3 * 4 * sides * rings);
  let at = 0;
  const triangle = (a: number, b: number, c: number) => {
    const [i, j, k] = [standIn[a]!, standIn[b]!, standIn[c]!];
    if (i === j || j === k || k === i) return;
    triangles[at++] = i;
    triangles[at++] = j;
    triangles[at++] = k;
  };
  /** Corners counter-clockwise from outside. */
  const quad = (a: number, b: number, c: number, d: number) => {
    triangle(a, b, c);
    triangle(a, c, d);
  };
  for (let i = 0; i < sides; i++) {
    const j = (i + 1) % sides;
    quad(inner + i, inner + j, j, i);
    for (let ring = 0; ring < rings - 1; ring++) {
      const here = ring * sides;
      const next = here + sides;
      quad(here + i, here + j, next + j, next + i);
      quad(inner + here + j, inner + here + i, inner + next + i, inner + next + j);
    }
    const end = (rings - 1) * sides;
    quad(end + i, end + j, inner + end + j, inner + end + i);
  }
  return at === triangles.length ? triangles : triangles.slice(0, at);
}

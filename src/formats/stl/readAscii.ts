/** The text kind of STL: `facet … outer loop … vertex x y z (three times) … endloop … endfacet`, until `endsolid`. */
import { MeshError, type ReadProgress, STRIDE } from '../mesh/meshError';
import { SoupBuilder } from '../mesh/soupBuilder';
import { TextLines } from '../mesh/textLines';

/** Several `solid … endsolid` in one file are read as one surface. Normals are not read: the corners' order says it. */
export function readAsciiStl(bytes: Uint8Array, progress?: ReadProgress): Float32Array {
  const soup = new SoupBuilder();
  const facet = new Float64Array(9);
  let corners = 0;
  let inside = false;
  let ended = false;
  const lines = new TextLines(bytes);
  const refuse = (what: string) => new MeshError(`line ${lines.line}: ${what}`);
  while (lines.nextLine()) {
    if (progress && lines.line % STRIDE === 0) progress(lines.position / bytes.length);
    const word = lines.word();
    switch (word) {
      case 'facet':
        if (inside) throw refuse('a facet begins before the one before it has ended');
        inside = true;
        corners = 0;
        break;
      case 'vertex':
        if (!inside) throw refuse('a vertex stands outside any facet');
        readCorner(lines, facet, 3 * (corners++ % 3), refuse);
        break;
      case 'endfacet':
        if (!inside || corners !== 3) throw refuse(`a facet has ${corners} corners; it must have three`);
        soup.add(facet, 0, 1, 2);
        inside = false;
        break;
      case 'solid':
        ended = false;
        break;
      case 'endsolid':
        ended = true;
        break;
      case 'outer':
      case 'endloop':
      case '':
        break;
      default:
        throw refuse(`"${word.slice(0, 20)}" is no word of an STL file`);
    }
  }
  if (inside || !ended)
    throw new MeshError('it is cut short: the text ends before "endsolid"; copy or export it again');
  return soup.soup();
}

function readCorner(lines: TextLines, into: Float64Array, at: number, refuse: (what: string) => MeshError): void {
  const x = lines.number();
  const y = lines.number();
  const z = lines.number();
  if (!Number.isFinite(x + y + z) || lines.hasWord())
    throw refuse(
      `a vertex must be three finite numbers, found "${lines.afterWord()}": mend that line, or export the surface again`,
    );
  into[at] = x;
  into[at + 1] = y;
  into[at + 2] = z;
}

/** The text kind of STL: `facet … outer loop … vertex x y z (three times) … endloop … endfacet`, until `endsolid`. */
import { StlError } from './stlError';

/** Several `solid … endsolid` in one file are read as one surface. Normals are not read: the corners' order says it. */
export function readAsciiStl(text: string): Float32Array {
  const soup: number[] = [];
  let corners = 0;
  let inside = false;
  let ended = false;
  const lines = text.split(/\r\n|\r|\n/);
  for (let i = 0; i < lines.length; i++) {
    const words = lines[i]!.trim().split(/\s+/);
    const refuse = (what: string) => new StlError(`line ${i + 1}: ${what}`);
    switch (words[0]!.toLowerCase()) {
      case 'facet':
        if (inside) throw refuse('a facet begins before the one before it has ended');
        [inside, corners] = [true, 0];
        break;
      case 'vertex':
        if (!inside) throw refuse('a vertex stands outside any facet');
        soup.push(...threeNumbers(words, refuse));
        corners++;
        break;
      case 'endfacet':
        if (!inside || corners !== 3) throw refuse(`a facet has ${corners} corners; it must have three`);
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
        throw refuse(`"${words[0]!.slice(0, 20)}" is no word of an STL file`);
    }
  }
  if (inside || !ended) throw new StlError('it is cut short: the text ends before "endsolid"; copy or export it again');
  return Float32Array.from(soup);
}

function threeNumbers(words: readonly string[], refuse: (what: string) => StlError): number[] {
  const numbers = words.slice(1).map(Number);
  if (numbers.length !== 3 || !numbers.every(Number.isFinite))
    throw refuse(`a vertex must be three finite numbers, found "${words.slice(1).join(' ').slice(0, 60)}"`);
  return numbers;
}

/** The head of a PLY file: which elements follow, how many, and of what numbers each is made. */
import { MeshError } from '../mesh/meshError';
import { TextLines } from '../mesh/textLines';

/** Bytes of each kind of number, under both of its names. */
export const SIZES: Readonly<Record<string, number>> = {
  char: 1,
  int8: 1,
  uchar: 1,
  uint8: 1,
  short: 2,
  int16: 2,
  ushort: 2,
  uint16: 2,
  int: 4,
  int32: 4,
  uint: 4,
  uint32: 4,
  float: 4,
  float32: 4,
  double: 8,
  float64: 8,
};

/** A number, or a list of them with its length before it. */
export type Property = { readonly name: string; readonly type: string; readonly lengthType: string | null };
export type PlyElement = { readonly name: string; readonly count: number; readonly properties: readonly Property[] };
export type PlyHeader = {
  readonly format: 'ascii' | 'little' | 'big';
  readonly elements: readonly PlyElement[];
  /** Where its numbers begin. */
  readonly bodyAt: number;
};

const FORMATS: Readonly<Record<string, PlyHeader['format']>> = {
  ascii: 'ascii',
  binary_little_endian: 'little',
  binary_big_endian: 'big',
};
const MOST_LINES = 1000;

/** @throws MeshError */
export function plyHeader(bytes: Uint8Array): PlyHeader {
  const lines = new TextLines(bytes);
  const elements: { name: string; count: number; properties: Property[] }[] = [];
  let format: PlyHeader['format'] | undefined;
  const refuse = (what: string) => new MeshError(`line ${lines.line} of its head: ${what}`);
  while (lines.nextLine() && lines.line <= MOST_LINES) {
    const word = lines.word();
    if (word === 'format') {
      const name = lines.word();
      format = FORMATS[name];
      if (!format)
        throw refuse(
          `format "${name.slice(0, 30)}" is not known; allowed: ascii, binary_little_endian, binary_big_endian`,
        );
    } else if (word === 'element') {
      const name = lines.word();
      const count = lines.number();
      if (!Number.isInteger(count) || count < 0) throw refuse('an element’s count must be a whole number');
      elements.push({ name, count, properties: [] });
    } else if (word === 'property') {
      const own = elements.at(-1);
      if (!own) throw refuse('a property stands before any element');
      own.properties.push(property(lines, refuse));
    } else if (word === 'end_header') {
      if (!format) throw refuse('it does not say its format');
      return { format, elements, bodyAt: bodyAt(bytes, lines.position, format) };
    } else if (word !== 'ply' && word !== 'comment' && word !== 'obj_info' && word !== '')
      throw refuse(`"${word.slice(0, 20)}" is no word of a PLY file’s head`);
  }
  throw new MeshError('it is cut short: its head does not come to "end_header"; copy or export it again');
}

function property(lines: TextLines, refuse: (what: string) => MeshError): Property {
  let type = lines.word();
  let lengthType: string | null = null;
  if (type === 'list') {
    lengthType = lines.word();
    type = lines.word();
  }
  for (const one of lengthType === null ? [type] : [lengthType, type])
    if (SIZES[one] === undefined) throw refuse(`"${one.slice(0, 20)}" is no kind of number that PLY knows`);
  return { name: lines.word(), type, lengthType };
}

/** A head whose lines end in \r alone may be followed by a number that begins with the byte \n: then it is the number’s. */
const bodyAt = (bytes: Uint8Array, position: number, format: PlyHeader['format']): number => {
  const isPair = bytes[position - 1] === 10 && bytes[position - 2] === 13;
  const firstEnd = bytes.indexOf(10);
  const firstReturn = bytes.indexOf(13);
  const endsInReturns = firstReturn >= 0 && firstEnd !== firstReturn + 1 && (firstEnd < 0 || firstReturn < firstEnd);
  return format !== 'ascii' && isPair && endsInReturns ? position - 1 : position;
};

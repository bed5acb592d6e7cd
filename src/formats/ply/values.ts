/**
 * The numbers of a PLY file's body one after another, whichever way they are written. What the file is too short for is refused
 * before room is made for it.
 */
import { MeshError } from '../mesh/meshError';
import { TextLines } from '../mesh/textLines';
import { type PlyElement, type PlyHeader, SIZES } from './header';

export type Values = {
  next(type: string): number;
  /** Passes over numbers of one kind. */
  skip(type: string, count: number): void;
  /** Where in the file it has come to, as a part of the whole. */
  part(): number;
};

export const cutShort = (what: string): MeshError =>
  new MeshError(`it is cut short or mislabelled: ${what}; copy or export it again`);

/** Insists that what is left can hold so many of an element: of a list at least its length. */
export function insistRoom(header: PlyHeader, element: PlyElement, bytes: Uint8Array): void {
  const each =
    header.format === 'ascii'
      ? 2 * element.properties.length
      : element.properties.reduce((sum, p) => sum + SIZES[p.lengthType ?? p.type]!, 0);
  const least = element.count * each - (header.format === 'ascii' ? 1 : 0);
  const left = bytes.length - header.bodyAt;
  if (element.count > 0 && least > left)
    throw cutShort(`${element.count} of "${element.name}" take ${least} bytes at least, it has ${Math.max(0, left)}`);
}

export const valuesOf = (header: PlyHeader, bytes: Uint8Array): Values =>
  header.format === 'ascii'
    ? textValues(bytes, header.bodyAt)
    : binaryValues(bytes, header.bodyAt, header.format === 'little');

function textValues(bytes: Uint8Array, from: number): Values {
  const lines = new TextLines(bytes, from);
  const next = (): number => {
    while (!lines.hasWord()) if (!lines.nextLine()) throw cutShort('its numbers end too soon');
    const value = lines.number();
    if (Number.isNaN(value))
      throw new MeshError(`line ${lines.line} of its body: a number is wanted; found "${lines.whole()}"`);
    return value;
  };
  return {
    next,
    skip(_, count) {
      for (let i = 0; i < count; i++) next();
    },
    part: () => lines.position / bytes.length,
  };
}

function binaryValues(bytes: Uint8Array, from: number, little: boolean): Values {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = from;
  const step = (size: number): number => {
    const own = at;
    at += size;
    if (at > bytes.length) throw cutShort(`its numbers end after ${bytes.length} bytes, before all have come`);
    return own;
  };
  return {
    next(type) {
      switch (type) {
        case 'float':
        case 'float32':
          return view.getFloat32(step(4), little);
        case 'uchar':
        case 'uint8':
          return view.getUint8(step(1));
        case 'int':
        case 'int32':
          return view.getInt32(step(4), little);
        case 'uint':
        case 'uint32':
          return view.getUint32(step(4), little);
        case 'double':
        case 'float64':
          return view.getFloat64(step(8), little);
        case 'char':
        case 'int8':
          return view.getInt8(step(1));
        case 'short':
        case 'int16':
          return view.getInt16(step(2), little);
        default:
          return view.getUint16(step(2), little);
      }
    },
    skip(type, count) {
      step(SIZES[type]! * count);
    },
    part: () => at / bytes.length,
  };
}

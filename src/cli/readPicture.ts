/** A scanned picture, PNG or JPEG → grey levels. Its size is looked up in its head before it is unpacked. */
import type { Raster } from '../../geometry';
import { readBytes } from './files';
import { UnusableInput } from './io';

const MAX_PICTURE_BYTES = 60_000_000;
/** A3 at 400 dpi has 31 million; each takes four bytes while it is unpacked. */
const MOST_PIXELS = 40_000_000;

export async function readPicture(path: string): Promise<Raster> {
  const bytes = readBytes(path, MAX_PICTURE_BYTES);
  const isPng = bytes.length > 24 && bytes[0] === 0x89 && bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47;
  const isJpeg = bytes.length > 4 && bytes[0] === 0xff && bytes[1] === 0xd8;
  if (!isPng && !isJpeg)
    throw new UnusableInput(`${path}: neither a PNG nor a JPEG picture; save the scan as one of them`);
  if (isPng) {
    const head = new DataView(bytes.buffer, bytes.byteOffset);
    insistSize(path, head.getUint32(16), head.getUint32(20));
  }
  try {
    return isPng ? await readPng(bytes) : await readJpeg(bytes);
  } catch (error) {
    if (isPng ? !hasPngEnd(bytes) : !hasJpegEnd(bytes))
      throw new UnusableInput(`${path}: the picture ends too soon; copy or save it again`);
    const why = error instanceof Error ? error.message : String(error);
    throw new UnusableInput(
      `${path}: the picture cannot be unpacked (${why}); save or copy it again, at most ${MOST_PIXELS / 1e6} million pixels`,
    );
  }
}

function insistSize(path: string, width: number, height: number): void {
  if (width * height > MOST_PIXELS)
    throw new UnusableInput(
      `${path}: the picture has ${width} × ${height} pixels, at most ${MOST_PIXELS / 1e6} million are read; scan it at 300 dpi`,
    );
}

/** Chunk by chunk (length, name, data, checksum) to the last, IEND. */
function hasPngEnd(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 12 <= bytes.length; at += 12 + view.getUint32(at))
    if (view.getUint32(at + 4) === 0x49454e44) return true;
  return false;
}

/** The marker that ends the image; some cameras write more behind it. */
function hasJpegEnd(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 2; at > 1; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
}

async function readPng(bytes: Uint8Array): Promise<Raster> {
  const { PNG } = await import('pngjs');
  const { width, height, data } = PNG.sync.read(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  return grey(width, height, data);
}

async function readJpeg(bytes: Uint8Array): Promise<Raster> {
  const { decode } = await import('jpeg-js');
  const { width, height, data } = decode(bytes, {
    useTArray: true,
    maxResolutionInMP: MOST_PIXELS / 1e6,
    maxMemoryUsageInMB: 1024,
  });
  return grey(width, height, data);
}

/** What shows through is paper. Luma as of Rec. 601. */
function grey(width: number, height: number, rgba: Uint8Array): Raster {
  const data = new Uint8Array(width * height);
  for (let k = 0; k < data.length; k++) {
    const at = 4 * k;
    const shade = 0.299 * rgba[at]! + 0.587 * rgba[at + 1]! + 0.114 * rgba[at + 2]!;
    const share = rgba[at + 3]! / 255;
    data[k] = Math.round(255 + (shade - 255) * share);
  }
  return { width, height, data };
}

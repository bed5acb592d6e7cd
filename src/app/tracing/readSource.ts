/** A chosen file → bytes of a DXF, or grey levels of a picture, unpacked by the browser itself. Nothing leaves this machine. */
import type { Raster } from '../../../geometry';
import { MAX_DXF_BYTES } from '../../formats/dxf/read';

export type Source =
  | { readonly kind: 'dxf'; readonly name: string; readonly bytes: Uint8Array }
  | {
      readonly kind: 'picture';
      readonly name: string;
      readonly raster: Raster;
      /** Smaller by `reduced` each way, for what must follow the hand. */
      readonly small: Raster;
      readonly reduced: number;
      /** To draw it from; to be given back when done. */
      readonly url: string;
    };

const MOST_PIXELS = 40_000_000;
const MAX_PICTURE_BYTES = 60_000_000;
/** Contours of so many pixels take a few hundredths of a second. */
const SMALL_PIXELS = 1_500_000;

/** @throws Error in words for the user */
export async function readSource(file: File): Promise<Source> {
  const { name } = file;
  if (/\.dxf$/i.test(name)) {
    if (file.size > MAX_DXF_BYTES)
      throw new Error(`${name} has ${file.size} bytes, at most ${MAX_DXF_BYTES} are read.`);
    return { kind: 'dxf', name, bytes: new Uint8Array(await file.arrayBuffer()) };
  }
  if (file.size > MAX_PICTURE_BYTES) throw new Error(`${name} is too large: scan it at 300 dpi, as PNG or JPEG.`);
  const bitmap = await createImageBitmap(file).catch(() => null);
  if (!bitmap)
    throw new Error(`${name} is neither a DXF drawing nor a picture that can be shown: use DXF, PNG or JPEG.`);
  const { width, height } = bitmap;
  if (width * height > MOST_PIXELS) {
    bitmap.close();
    throw new Error(`${name} has ${width} × ${height} pixels, too many to trace: scan it at 300 dpi.`);
  }
  const raster = greyOf(bitmap, width, height);
  const reduced = Math.max(1, Math.sqrt((width * height) / SMALL_PIXELS));
  const small = reduced === 1 ? raster : greyOf(bitmap, Math.round(width / reduced), Math.round(height / reduced));
  bitmap.close();
  return { kind: 'picture', name, raster, small, reduced: width / small.width, url: URL.createObjectURL(file) };
}

/** What shows through is paper. Luma as of Rec. 601. */
function greyOf(bitmap: ImageBitmap, width: number, height: number): Raster {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) throw new Error('This browser cannot read pictures.');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.drawImage(bitmap, 0, 0, width, height);
  const rgba = pen.getImageData(0, 0, width, height).data;
  const data = new Uint8Array(width * height);
  for (let k = 0; k < data.length; k++)
    data[k] = Math.round(0.299 * rgba[4 * k]! + 0.587 * rgba[4 * k + 1]! + 0.114 * rgba[4 * k + 2]!);
  return { width, height, data };
}

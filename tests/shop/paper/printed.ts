/**
 * Pages as a printer would show them: drawn by pdftoppm at ten pixels a millimetre, and measured by how dark pixels are, so
 * that edges are found to a fraction of one. mm from the page's top left.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PIXELS_PER_MM = 10;

export const installed = spawnSync('pdftoppm', ['-v']).status === 0;

export type Run = { readonly from: number; readonly to: number };
export type Page = {
  readonly width: number;
  readonly height: number;
  /** Dark stretches along a row, from left to right. */
  readonly across: (y: number, from?: number, to?: number) => Run[];
  /** Dark stretches down a column. */
  readonly down: (x: number, from?: number, to?: number) => Run[];
};

/** @param only the pages wanted, the first being 1. Default: all */
export function printed(pdf: Uint8Array, only?: { readonly first: number; readonly last: number }): Page[] {
  const folder = mkdtempSync(join(tmpdir(), 'evenrun-pdf-'));
  try {
    const file = join(folder, 'packet.pdf');
    writeFileSync(file, pdf);
    const range = only ? ['-f', String(only.first), '-l', String(only.last)] : [];
    const dpi = String(25.4 * PIXELS_PER_MM);
    const { status, stderr } = spawnSync('pdftoppm', ['-r', dpi, '-gray', ...range, file, join(folder, 'page')]);
    if (status !== 0) throw new Error(`pdftoppm: ${stderr}`);
    const pages = readdirSync(folder).filter((name) => name.endsWith('.pgm'));
    return pages.sort().map((name) => pageOf(readFileSync(join(folder, name))));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The middle of the column of pixels that x falls in: what `down` looks at. */
export const columnAt = (x: number): number => (Math.floor(x * PIXELS_PER_MM) + 0.5) / PIXELS_PER_MM;

/** A raw portable graymap: `P5`, width, height, the largest value, then a byte a pixel. */
function pageOf(file: Buffer): Page {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error('pdftoppm wrote no graymap');
  const [width, height] = [Number(head[1]), Number(head[2])];
  const pixels = file.subarray(head[0].length);
  /** 0 white, 1 black. */
  const darkness = (column: number, row: number): number => 1 - pixels[row * width + column]! / 255;
  const pixel = (mm: number): number => Math.floor(mm * PIXELS_PER_MM);
  return {
    width: width / PIXELS_PER_MM,
    height: height / PIXELS_PER_MM,
    across: (y, from = 0, to = width / PIXELS_PER_MM) =>
      runs((i) => darkness(i, pixel(y)), pixel(from), Math.min(width, pixel(to))),
    down: (x, from = 0, to = height / PIXELS_PER_MM) =>
      runs((i) => darkness(pixel(x), i), pixel(from), Math.min(height, pixel(to))),
  };
}

/** A pixel half dark at a run's edge counts half: anti-aliasing says where in it the edge lies. */
function runs(dark: (i: number) => number, from: number, to: number): Run[] {
  const found: Run[] = [];
  for (let i = from; i < to; i++) {
    if (dark(i) < 0.1) continue;
    const start = i;
    while (i + 1 < to && dark(i + 1) >= 0.1) i++;
    const [first, last] = [start + 1 - dark(start), i + dark(i)];
    found.push({ from: first / PIXELS_PER_MM, to: (start === i ? start + 1 : last) / PIXELS_PER_MM });
  }
  return found;
}

export const middle = ({ from, to }: Run): number => (from + to) / 2;

/** Why a mesh file was refused: a clause that follows the file's name, such as "it is cut short …". */
export class MeshError extends Error {
  override readonly name = 'MeshError';
}

/** Beyond any scan that an engine bay needs; a count in a file's head that promises more is refused before room is made for it. */
export const MOST_TRIANGLES = 10_000_000;

export const tooMany = (count: number): MeshError =>
  new MeshError(
    `it holds ${count} triangles, at most ${MOST_TRIANGLES} are read; thin it or crop it where it was made, to two million or fewer`,
  );

/** Hears which part of the file is read, from 0 to 1. */
export type ReadProgress = (part: number) => void;

/** Triangles, or lines of text, between two words of progress. */
export const STRIDE = 65_536;

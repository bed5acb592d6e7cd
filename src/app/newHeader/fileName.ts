/** A design's title as a file name. */

/** A name that every file system takes. */
export function fileNameOf(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .trim()
    .replace(/\s+/g, '-')
    .toLowerCase()
    .slice(0, 60);
  return `${plain || 'header'}.evenrun.json`;
}

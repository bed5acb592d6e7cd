/** Whether the header comes off, a line for each piece that comes off by itself, and what to leave loose where it does not. */
import type { RemovalReport } from '../../../../geometry';

export const removalLines = ({ pieces, joints }: RemovalReport): string =>
  pieces.length === 0
    ? ''
    : ['Getting it off', ...[...pieces, ...joints].map(({ message }) => `  ${message}`)].join('\n');

/** A sign for each state of reach, told apart by shape: filled tick, half disc, ring with a bar, cross. */
import type { Reach } from '../../../../geometry';

const SIGNS: Readonly<Record<Reach, { readonly line: string; readonly fill?: string }>> = {
  reachable: { line: 'M3 8.5 6.5 12 13 4.5' },
  'one-tool': { line: 'M8 2.5a5.5 5.5 0 1 0 0 11a5.5 5.5 0 1 0 0-11ZM8 5.2v5.6' },
  'before-wrapping': {
    line: 'M8 2.5a5.5 5.5 0 1 0 0 11a5.5 5.5 0 1 0 0-11Z',
    fill: 'M8 2.5a5.5 5.5 0 0 0 0 11Z',
  },
  blocked: { line: 'M3.8 3.8l8.4 8.4M12.2 3.8l-8.4 8.4' },
};

export function ReachMark({ reach }: { readonly reach: Reach }) {
  const { line, fill } = SIGNS[reach];
  return (
    <svg width={16} height={16} viewBox="0 0 16 16" aria-hidden="true" className={`room-mark room-mark-${reach}`}>
      {fill && <path d={fill} fill="currentColor" />}
      <path d={line} fill="none" stroke="currentColor" strokeWidth={1.7} strokeLinecap="round" strokeLinejoin="round" />
    </svg>
  );
}

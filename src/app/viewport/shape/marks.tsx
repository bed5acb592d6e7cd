/** The marks that can be taken hold of: drawn as on a shop drawing, a pen line with paper round it. Pixels about the origin. */
import type { ReactNode } from 'react';
import type { Handle } from '../../shape/handle';

const ARC = 'M -9 3 A 9.5 9.5 0 1 1 9 3';
const ARC_TIP = 'M 4.4 2.4 L 9.2 3.4 L 11 -1.4';
const CROSS = 'M -12 0 H 12 M 0 -12 V 12';
const TIPS = 'M 9 -3 L 12 0 L 9 3 M -9 -3 L -12 0 L -9 3 M -3 -9 L 0 -12 L 3 -9 M -3 9 L 0 12 L 3 9';

/** Each line twice: paper under ink, so that it reads on steel and on sheet alike. */
const pen = (d: string): ReactNode => (
  <>
    <path d={d} className="paper" />
    <path d={d} className="pen" />
  </>
);

export function Mark({
  handle,
  locked,
  picked,
}: {
  readonly handle: Handle;
  readonly locked: boolean;
  readonly picked: boolean;
}) {
  if (locked)
    return (
      <>
        <circle r="11" className="disc" />
        <path d="M -3.2 -1 V -3.4 A 3.2 3.2 0 0 1 3.2 -3.4 V -1" className="pen" />
        <rect x="-5" y="-1" width="10" height="7" rx="1.2" className="solid" />
      </>
    );
  switch (handle.kind) {
    case 'bend':
      return (
        <>
          <circle r={picked ? 8 : 6} className="ring-paper" />
          <circle r={picked ? 8 : 6} className="ring" />
          {picked && <circle r="2.4" className="solid" />}
        </>
      );
    case 'slide':
      return pen('M -10 0 H 10 M 6 -4 L 10 0 L 6 4 M -6 -4 L -10 0 L -6 4');
    case 'run':
      return pen('M -10 0 H 10 M -10 -5 V 5 M 10 -5 V 5');
    case 'turn':
      return (
        <>
          {pen(ARC)}
          {pen(ARC_TIP)}
        </>
      );
    case 'tilt':
      return (
        <>
          <circle r="3" className="solid" />
          {pen(ARC)}
          {pen(ARC_TIP)}
        </>
      );
    case 'add':
      return (
        <>
          <circle r="9" className="disc" />
          <path d="M -4.5 0 H 4.5 M 0 -4.5 V 4.5" className="pen" />
        </>
      );
    case 'capsule-end':
      return (
        <>
          <circle r="6" className="ring-paper" />
          <circle r="6" className="ring" />
        </>
      );
    case 'face':
      return <rect x="-5" y="-5" width="10" height="10" className="disc" />;
    default:
      return (
        <>
          {pen(CROSS)}
          {pen(TIPS)}
        </>
      );
  }
}

/** What a handle does, beside it while the pointer rests there: two short lines. */
export function tipOf(handle: Handle): string {
  switch (handle.kind) {
    case 'slide':
      return 'Drag along the straight, or click to type';
    case 'turn':
      return 'Drag to turn what lies beyond, or click to type degrees';
    case 'tilt':
      return 'Drag to turn, or click to type degrees';
    case 'add':
      return 'Drag out a new bend. Insert adds one here';
    case 'face':
      return 'Drag the face, or click to type';
    default:
      return 'Drag, or click to type. X, Y, Z keep to an axis';
  }
}

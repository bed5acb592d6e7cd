/**
 * The crop's six faces to be pulled at in the picture; each mark is placed anew after every picture. The number fields say the
 * same and are the way by keyboard.
 */
import { type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { scale } from '../../../../geometry';
import { formatLength } from '../../../../shared/units';
import { useDisplay } from '../../actions/display';
import { stepFor } from '../../drawing/base';
import type { Corners } from '../facts';
import { FACES, type Face, faceAt, middleOfFace, type Px, slope, withFace } from './cropFace';
import type { Picture } from './picture';

type Props = {
  readonly picture: Picture;
  /** Called after each picture. */
  readonly onDrawn: RefObject<() => void>;
  /** mm. */
  readonly crop: Corners;
  /** Of one unit of the file, mm. */
  readonly k: number;
  put(crop: Corners): void;
};

/** An axis that points at the eye has no length to pull along: its faces have no mark then, px for the box's whole length. */
const LEAST_PX = 16;
const NAMES = ['X', 'Y', 'Z'] as const;

export function CropHandles({ picture, onDrawn, crop, k, put }: Props) {
  const display = useDisplay();
  const marks = useRef<(HTMLSpanElement | null)[]>([]);
  const [held, setHeld] = useState<{ readonly face: Face; readonly off: Px; readonly from: Corners } | null>(null);
  // In mm, as the fields are; the picture is in the file's unit.
  const see = (place: Parameters<Picture['see']>[0]): Px => picture.see(scale(place, 1 / k));
  useEffect(() => {
    onDrawn.current = () => {
      FACES.forEach((face, i) => {
        const mark = marks.current[i];
        if (!mark) return;
        const [x, y] = see(middleOfFace(crop, face));
        const long = slope(see, crop, face).size * Math.abs(crop[1][face.axis] - crop[0][face.axis]);
        mark.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
        mark.style.visibility = long < LEAST_PX && held?.face !== face ? 'hidden' : 'visible';
      });
    };
    onDrawn.current();
    return () => {
      onDrawn.current = () => {};
    };
  });
  const local = (e: PointerEvent<HTMLElement>): Px => {
    const box = e.currentTarget.parentElement!.getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  const press = (face: Face) => (e: PointerEvent<HTMLElement>) => {
    if (e.button !== 0 || held) return;
    e.currentTarget.setPointerCapture(e.pointerId);
    const [x, y] = see(middleOfFace(crop, face));
    const at = local(e);
    setHeld({ face, off: [at[0] - x, at[1] - y], from: crop });
  };
  const move = (e: PointerEvent<HTMLElement>) => {
    if (!held) return;
    const at = local(e);
    const { face, off } = held;
    const step = stepFor(display, 1 / Math.max(1e-9, slope(see, crop, face).size));
    put(withFace(crop, face, faceAt(see, crop, face, [at[0] - off[0], at[1] - off[1]]), step));
  };
  return FACES.map((face, i) => {
    const isHeld = held !== null && held.face === face;
    return (
      <span
        key={`${face.axis} ${face.corner}`}
        ref={(node) => {
          marks.current[i] = node;
        }}
        className="crop-handle"
        data-face={`${NAMES[face.axis]} ${face.corner}`}
        data-held={isHeld || undefined}
        aria-hidden="true"
        onPointerDown={press(face)}
        onPointerMove={move}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => {
          if (held) put(held.from);
          setHeld(null);
        }}
      >
        <i />
        {isHeld && (
          <b>
            {NAMES[face.axis]} {face.corner === 0 ? 'from' : 'to'} {formatLength(crop[face.corner][face.axis], display)}
          </b>
        )}
      </span>
    );
  });
}

/** One runner's strip: hatched inside the head, plain where straight, shaded where bent, with the group's target line. */
import { type FocusEvent, type KeyboardEvent, useId, useState } from 'react';
import type { Paint } from '../colours';
import { HeadMark } from './HeadMark';
import { PieceView } from './PieceView';
import { type Scale, STRIP_HEIGHT } from './scale';
import type { Strip } from './strip';

/** The target line stands out above and below the strips, so that it reads as one line through all of them. */
const TARGET_OVERHANG = 20;

type Props = {
  readonly strip: Strip;
  readonly target: number | null;
  readonly scale: Scale;
  readonly paint: Paint;
};

export function StripView({ strip, target, scale, paint }: Props) {
  const hatch = useId();
  const [current, setCurrent] = useState(0);
  const parts = strip.pieces.filter((p) => p.kind !== 'head');

  // One stop of the Tab key for each strip; the arrows walk along it, from wherever the focus came to be.
  const piecesIn = (drawing: SVGSVGElement) => [...drawing.querySelectorAll<SVGGElement>('.piece')];
  const follow = (event: FocusEvent<SVGSVGElement>) =>
    setCurrent(Math.max(0, piecesIn(event.currentTarget).indexOf(event.target as SVGGElement)));
  const walk = (event: KeyboardEvent<SVGSVGElement>) => {
    const step = { ArrowRight: 1, ArrowLeft: -1, Home: -parts.length, End: parts.length }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = Math.min(parts.length - 1, Math.max(0, current + step));
    piecesIn(event.currentTarget)[next]?.focus();
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no fieldset
    <svg
      width="100%"
      height={STRIP_HEIGHT}
      className="strip"
      role="group"
      aria-label={`${strip.id}, unrolled`}
      onFocus={follow}
      onKeyDown={walk}
    >
      <HeadMark strip={strip} scale={scale} paint={paint} hatch={hatch} />
      {parts.map((piece, i) => (
        <PieceView
          key={`${piece.kind}${piece.index}`}
          runner={strip.id}
          piece={piece}
          scale={scale}
          paint={paint}
          stop={i === Math.min(current, parts.length - 1)}
        />
      ))}
      {target !== null && (
        <line
          className="target"
          x1={scale.x(target)}
          x2={scale.x(target)}
          y1={-TARGET_OVERHANG}
          y2={STRIP_HEIGHT + TARGET_OVERHANG}
        />
      )}
    </svg>
  );
}

/** One straight or bend of a strip: drawn, named, and lit with the same part in the 3D view and the tables. */
import type { CSSProperties } from 'react';
import { useDisplay } from '../actions/display';
import type { Paint } from '../colours';
import { angleNumber, lengthNumber } from '../format';
import { litClass, pointing, useLit } from '../parts/usePointing';
import type { Ref } from '../session';
import { DIAL_RADIUS, Dial } from './Dial';
import { type Scale, STRIP_HEIGHT } from './scale';
import { BEND_SHARE, STRAIGHT_SHARE } from './shades';
import type { BendPiece, StraightPiece } from './strip';

type Props = {
  readonly runner: string;
  readonly piece: StraightPiece | BendPiece;
  readonly scale: Scale;
  readonly paint: Paint;
  /** Whether the Tab key stops here. */
  readonly stop: boolean;
};

const MID = STRIP_HEIGHT / 2;
/** Narrower than these, the label would run over its neighbours and is left to the tables. */
const ROOM_FOR_LENGTH = 44;
const ROOM_FOR_ANGLE = 38;
const ROOM_FOR_BOTH = ROOM_FOR_ANGLE + 2 * DIAL_RADIUS + 8;
const LEAST_TARGET = 3;

export function PieceView({ runner, piece, scale, paint, stop }: Props) {
  const display = useDisplay();
  const ref: Ref =
    piece.kind === 'bend'
      ? { kind: 'runner', id: runner, bend: piece.index }
      : { kind: 'runner', id: runner, straight: piece.index };
  const lit = useLit(ref);
  const fails = piece.kind === 'straight' && piece.short;
  const x = scale.x(Math.min(piece.from, piece.to));
  const width = Math.abs(scale.x(piece.to) - scale.x(piece.from));
  const share = piece.kind === 'bend' ? BEND_SHARE : STRAIGHT_SHARE;
  const say = (mm: number) => lengthNumber(mm, display);
  const name =
    piece.kind === 'bend'
      ? `${runner} bend ${piece.index + 1}: ${angleNumber(piece.angle)}°, ${piece.index === 0 ? 'clocked' : 'rotated'} ${angleNumber(piece.rotation)}°, radius ${say(piece.radius)} ${display}`
      : `${runner} straight ${piece.index + 1}: ${say(piece.length)} ${display}, at least ${say(piece.least)}${piece.short ? ', too short' : ''}`;

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      className={`piece ${piece.kind}${fails ? ' fails' : ''}${litClass(lit)}`}
      role="button"
      tabIndex={stop ? 0 : -1}
      aria-pressed={lit.selected}
      aria-label={name}
      style={{ '--paint': paint.colour, '--share': `${share * 100}%` } as CSSProperties}
      {...pointing(ref)}
    >
      <title>{name}</title>
      <rect className="body" x={x} y={0.5} width={Math.max(width, LEAST_TARGET)} height={STRIP_HEIGHT - 1} />
      {piece.kind === 'bend' ? (
        <BendLabel piece={piece} x={x} width={width} colour={paint.colour} />
      ) : (
        <StraightLabel piece={piece} x={x} width={width} scale={scale} text={say(piece.length)} />
      )}
    </g>
  );
}

type BendLabelProps = { piece: BendPiece; x: number; width: number; colour: string };

function BendLabel({ piece, x, width, colour }: BendLabelProps) {
  const both = width >= ROOM_FOR_BOTH;
  const dial = both || width < ROOM_FOR_ANGLE;
  const room = both ? 2 * DIAL_RADIUS + 6 : 0;
  return (
    <>
      {dial && width >= 2 * DIAL_RADIUS && (
        <Dial
          x={both ? x + DIAL_RADIUS + 4 : x + width / 2}
          y={MID}
          degrees={piece.rotation}
          first={piece.index === 0}
          colour={colour}
        />
      )}
      {width >= ROOM_FOR_ANGLE && (
        <text x={x + room + (width - room) / 2} y={MID} className="label strong">
          {angleNumber(piece.angle)}°
        </text>
      )}
    </>
  );
}

type StraightLabelProps = { piece: StraightPiece; x: number; width: number; scale: Scale; text: string };

function StraightLabel({ piece, x, width, scale, text }: StraightLabelProps) {
  return (
    <>
      {piece.least > 0 && <LeastBar from={scale.x(piece.from)} to={scale.x(piece.from + piece.least)} />}
      {width >= ROOM_FOR_LENGTH && (
        <text x={x + width / 2} y={MID} className="label">
          {text}
        </text>
      )}
    </>
  );
}

/** The straight that the tooling needs here, as a gauge under the straight there is. */
function LeastBar({ from, to }: { readonly from: number; readonly to: number }) {
  const foot = STRIP_HEIGHT - 1.5;
  return <path className="least" d={`M${from + 1} ${foot}H${to}M${to} ${STRIP_HEIGHT}v-6`} />;
}

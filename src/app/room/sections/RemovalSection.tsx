/** Getting it off and on: whether each piece slides off its studs and leaves the bay, by which path, and which joint helps. */
import './pieces.css';
import type { JointAdvice, RemovalPiece } from '../../../../geometry';
import { Icon } from '../../panels/Icon';
import { Length } from '../../parts/Length';
import { refAtPath } from '../../refs';
import { useSession } from '../../session';
import { useAnswers } from '../answers';
import { goTo, light, unlight } from '../go';
import { refOf } from '../refOf';
import { listed } from '../words';
import { PlayPiece } from './PlayPiece';
import { type Of, Pending, Section } from './Section';

export function RemovalSection({ header }: Of) {
  const known = useAnswers((s) => s.removal);
  const pieces = known.value?.pieces ?? [];
  const stuck = pieces.filter((piece) => !comesOff(piece)).length;
  const says =
    pieces.length === 0
      ? undefined
      : stuck === 0
        ? 'comes off'
        : pieces.length === 1
          ? 'does not come off'
          : `${stuck} of ${pieces.length} do not come off`;
  return (
    <Section section="removal" name="Off and on" says={says} fails={stuck > 0} known={known}>
      <Pending known={known} what="Trying to get it off: this takes a while" />
      {known.value && pieces.length === 0 && (
        <p className="quiet">There is nothing to take off yet: lay the header first.</p>
      )}
      {pieces.map((piece, i) => (
        <Piece key={pieceName(piece)} piece={piece} index={i} header={header} stale={known.working} />
      ))}
      {known.value && known.value.joints.length > 0 && <Joints joints={known.value.joints} header={header} />}
    </Section>
  );
}

const comesOff = (piece: RemovalPiece): boolean => piece.slides && piece.leaves;
const pieceName = ({ runners, merges }: RemovalPiece): string => listed([...runners, ...merges], 5);

type PieceProps = {
  readonly piece: RemovalPiece;
  readonly index: number;
  readonly header: Of['header'];
  readonly stale: boolean;
};

function Piece({ piece, index, header, stale }: PieceProps) {
  const { stopped, room } = piece;
  const off = comesOff(piece);
  const look = () => {
    if (stopped)
      goTo(
        stopped.at,
        stopped.by.map((id) => refOf(header, id)),
        160,
      );
  };
  return (
    <div className={`room-piece${stale ? ' stale' : ''}`}>
      <h3>
        <span className={off ? undefined : 'fails'}>
          <Icon name={off ? 'tick' : 'warn'} />
        </span>
        {pieceName(piece)}
      </h3>
      <p>{piece.message}</p>
      <dl className="room-facts">
        <dt>Drawn off straight</dt>
        <dd>{piece.slides ? 'slides' : 'does not slide'}</dd>
        <dt>Out of the bay</dt>
        <dd>{piece.leaves ? 'leaves' : 'does not leave'}</dd>
        {room && (
          <>
            <dt>Least room</dt>
            <dd>
              <Length mm={room.gap} decimals={1} /> beside {room.by}
            </dd>
          </>
        )}
        {stopped && (
          <>
            <dt>Stopped after</dt>
            <dd>
              <button
                type="button"
                className="link"
                onClick={look}
                onPointerEnter={() => light(refOf(header, stopped.by[0] ?? ''), null)}
                onPointerLeave={unlight}
              >
                <Length mm={stopped.after} decimals={0} />
              </button>{' '}
              by {listed(stopped.by)}
            </dd>
          </>
        )}
      </dl>
      {piece.path.length > 1 && <PlayPiece index={index} path={piece.path} />}
    </div>
  );
}

function Joints({ joints, header }: { readonly joints: readonly JointAdvice[]; readonly header: Of['header'] }) {
  return (
    <>
      <h3>Leave loose</h3>
      <ul className="room-remarks">
        {joints.map((joint) => (
          <li key={`${joint.where} ${joint.joint}`}>
            <button
              type="button"
              onClick={() => useSession.getState().select(refAtPath(joint.where, header))}
              onPointerEnter={() => light(refAtPath(joint.where, header), null)}
              onPointerLeave={unlight}
            >
              {joint.message}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

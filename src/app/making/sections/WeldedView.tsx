/** A runner that is welded up: its pieces as they are sawn, between them how the next is turned; pointing at one lights it. */
import type { Header } from '../../../../geometry';
import { wayOf } from '../../../shop/bench/units';
import { cutsOf } from '../../../shop/bench/weldedSteps';
import { list } from '../../../shop/list';
import type { Joint, Making, Piece, WeldedTube } from '../../../shop/making/report';
import { isAllRound, lessInPlace, othersIn } from '../../../shop/making/welded/torchRoom';
import { useDisplay } from '../../actions/display';
import { angleNumber, lengthNumber } from '../../format';
import { Angle } from '../../parts/Angle';
import { Length } from '../../parts/Length';
import { useSession } from '../../session';
import { useMakeLook } from '../look';
import { refOfStretch, type Stretch, stretchesOf } from '../pieces';
import { roundingWords } from '../words';
import { Remarks } from './Remarks';

type Props = { readonly tube: WeldedTube; readonly making: Making; readonly header: Header };

export function WeldedView({ tube, making, header }: Props) {
  const display = useDisplay();
  const cuts = cutsOf(making);
  const length = header.runners.find((r) => r.runner.id === tube.runner)?.centerline?.length ?? 0;
  const stretches = stretchesOf(tube, length);
  return (
    <>
      {tube.assumed && (
        <p className="note">
          <span className="make-assumed">assumed</span> The workshop lists no bend of this tube: these pieces are cut
          from U bends that are assumed to be on sale.
        </p>
      )}
      <Remarks remarks={tube.remarks} label={`About ${tube.runner}`} />
      <table className="make-pieces" aria-label={`Pieces of ${tube.runner}, as sawn`}>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col" className="right">
              Before <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Arc
            </th>
            <th scope="col" className="right">
              Behind <span className="unit">{display}</span>
            </th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          <TurnRow name="Start" turn={tube.start.turn} around={tube.start.around} />
          {tube.pieces.map((piece, i) => {
            const joint = tube.joints.find(({ after }) => after === i);
            const cut = cuts.get(piece.id);
            return (
              <PieceRows
                key={piece.id}
                piece={piece}
                stock={cut ? `${cut.stock.stock} no. ${cut.stock.number}` : '—'}
                joint={joint}
                stretch={stretches[i]!}
                header={header}
              />
            );
          })}
        </tbody>
      </table>
      <p className="note">
        Straights as sawn, before and behind each arc, with what saw and weld take. Turns look along the tube away from
        its start, from one piece’s scribed line to the next.
      </p>
      <p className="note">{roundingWords(tube.rounded, (mm) => `${lengthNumber(mm, display, 1)} ${display}`)}</p>
    </>
  );
}

type RowsProps = {
  readonly piece: Piece;
  readonly stock: string;
  readonly joint: Joint | undefined;
  readonly stretch: Stretch;
  readonly header: Header;
};

function PieceRows({ piece, stock, joint, stretch, header }: RowsProps) {
  const lit = useMakeLook((s) => s.meant?.piece === piece.id && !s.meant.joint);
  const set = useMakeLook((s) => s.set);
  const pick = () => {
    const { selected, select } = useSession.getState();
    if (lit) {
      set({ meant: null });
      if (selected?.kind === 'runner') select({ kind: 'runner', id: stretch.runner });
      return;
    }
    // The bend lights up in the picture and on the rack; the piece's own ends are drawn over it.
    select(refOfStretch(header, stretch));
    set({ meant: { runner: stretch.runner, piece: stretch.piece } });
  };
  const bend = piece.kind === 'bend';
  return (
    <>
      <tr
        className={`pick make-piece${lit ? ' selected' : ''}`}
        onClick={pick}
        tabIndex={0}
        aria-label={`Piece ${piece.id}`}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' && event.key !== ' ') return;
          event.preventDefault();
          event.stopPropagation();
          pick();
        }}
      >
        <th scope="row">{piece.id}</th>
        <td className="right">
          <Length mm={piece.sawnIn} decimals={1} bare />
        </td>
        <td className="right">{bend ? <Angle degrees={piece.angle} /> : <span className="quiet">straight</span>}</td>
        <td className="right">{bend ? <Length mm={piece.sawnOut} decimals={1} bare /> : ''}</td>
        <td>{stock}</td>
      </tr>
      {joint && <TurnRow name="" turn={joint.turn} around={joint.around} joint={joint} behind={stretch} />}
    </>
  );
}

type TurnProps = {
  readonly name: string;
  readonly turn: number;
  readonly around: number;
  readonly joint?: Joint;
  readonly behind?: Stretch;
};

function TurnRow({ name, turn, around, joint, behind }: TurnProps) {
  const lit = useMakeLook((s) => s.meant?.joint === true && s.meant.piece === behind?.piece);
  const set = useMakeLook((s) => s.set);
  const pick = () => behind && set({ meant: lit ? null : { runner: behind.runner, piece: behind.piece, joint: true } });
  const display = useDisplay();
  const say = (mm: number) => `${lengthNumber(mm, display, 1)} ${display}`;
  const all = !joint || isAllRound(joint.torchFree);
  return (
    <tr className={`make-turn${behind ? ' pick' : ''}${lit ? ' selected' : ''}`} onClick={pick}>
      <th scope="row">
        {behind ? (
          <button type="button" className="make-weld" aria-pressed={lit} aria-label={`Weld behind ${behind.piece}`}>
            weld
          </button>
        ) : (
          <span className="quiet">{name}</span>
        )}
      </th>
      <td colSpan={4}>
        {Math.abs(turn) < 0.05
          ? 'no turn'
          : `turn ${angleNumber(Math.abs(turn), 1)}° ${wayOf(turn)}, ${say(Math.abs(around))} round`}
        {joint && (
          <span className="quiet">
            {' '}
            · in all {angleNumber(joint.total, 1)}°, {say(joint.totalAround)}
          </span>
        )}
        {!all && <span className="fails"> · torch has room for {Math.round(joint.torchFree)}° of 360°</span>}
        {joint?.torchFreeInPlace !== undefined && lessInPlace(joint.torchFree, joint.torchFreeInPlace) && (
          <span>
            {' '}
            · weld it off the header: {Math.round(joint.torchFreeInPlace)}° with {list(othersIn(joint.inTheWay))}
          </span>
        )}
      </td>
    </tr>
  );
}

/** How each runner is made as chosen: all of them in a table, or piece by piece, bend by bend of the one that is picked. */
import type { Header } from '../../../../geometry';
import { chosenWay } from '../../../shop/making/chosen';
import type { Making } from '../../../shop/making/report';
import { Length } from '../../parts/Length';
import { Swatch } from '../../parts/Swatch';
import { usePaints } from '../../parts/usePaints';
import { pointing } from '../../parts/usePointing';
import { useSession } from '../../session';
import { bentOf } from '../pieces';
import { BentView } from './BentView';
import { Fold } from './Fold';
import { HeightsView } from './HeightsView';
import { WeldedView } from './WeldedView';

type Props = { readonly making: Making; readonly header: Header; readonly busy: boolean };

export function TubesSection({ making, header, busy }: Props) {
  const picked = useSession((s) => (s.selected?.kind === 'runner' ? s.selected.id : null));
  const welded = making.welded.find(({ runner }) => runner === picked);
  return (
    <Fold section="tubes" name="Tubes" says={welded ? welded.runner : `${making.welded.length} runners`} busy={busy}>
      <RunnerChips ids={making.welded.map(({ runner }) => runner)} picked={welded?.runner ?? null} />
      {!welded && <AllTubes making={making} />}
      {welded && chosenWay(making, welded.tube) === 'welded' && (
        <WeldedView tube={welded} making={making} header={header} />
      )}
      {welded && chosenWay(making, welded.tube) === 'bent' && (
        <BentView runner={welded.runner} tubes={bentOf(making, welded.runner)} header={header} />
      )}
      {welded && <HeightsView found={making.heights.find(({ runner }) => runner === welded.runner)} header={header} />}
    </Fold>
  );
}

function RunnerChips({ ids, picked }: { readonly ids: readonly string[]; readonly picked: string | null }) {
  const paints = usePaints();
  const select = useSession((s) => s.select);
  return (
    <div className="room-chips make-runners" role="toolbar" aria-label="Runner">
      <button type="button" className="chip" aria-pressed={picked === null} onClick={() => select(null)}>
        All
      </button>
      {ids.map((id) => {
        const paint = paints.get(id);
        return (
          <button
            key={id}
            type="button"
            className="chip"
            aria-pressed={picked === id}
            onClick={() => select(picked === id ? null : { kind: 'runner', id })}
          >
            {paint && <Swatch paint={paint} />} {id}
          </button>
        );
      })}
    </div>
  );
}

function AllTubes({ making }: { readonly making: Making }) {
  const paints = usePaints();
  return (
    <table className="make-all">
      <caption className="unseen">All runners, as they are made</caption>
      <thead>
        <tr>
          <th scope="col">Runner</th>
          <th scope="col">Made</th>
          <th scope="col" className="right">
            Pieces
          </th>
          <th scope="col" className="right">
            Bends
          </th>
          <th scope="col" className="right" title="How far its end comes out when every cut and turn is rounded">
            Rounding
          </th>
        </tr>
      </thead>
      <tbody>
        {making.welded.map((tube) => {
          const way = chosenWay(making, tube.tube);
          const bent = bentOf(making, tube.runner);
          const paint = paints.get(tube.runner);
          const stops = (way === 'bent' ? bent.flatMap((b) => b.remarks) : tube.remarks).some((r) => r.stops);
          const bends =
            way === 'bent'
              ? bent.flatMap((b) => b.fromStart).filter(({ angle }) => angle > 0).length
              : tube.pieces.filter(({ kind }) => kind === 'bend').length;
          const rounded = way === 'bent' ? Math.max(0, ...bent.map((b) => b.rounded.position)) : tube.rounded.position;
          return (
            <tr key={tube.runner} className="pick" {...pointing({ kind: 'runner', id: tube.runner })} tabIndex={0}>
              <th scope="row">
                {paint && <Swatch paint={paint} />} {tube.runner}
              </th>
              <td className={stops ? 'fails' : undefined}>{stops ? 'cannot be' : way}</td>
              <td className="right number">{way === 'bent' ? bent.length : tube.pieces.length}</td>
              <td className="right number">{bends}</td>
              <td className="right">
                <Length mm={rounded} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

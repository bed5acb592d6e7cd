/** Sensors in their bungs: how each leans, how far from the collector, what room it has. */
import './pieces.css';
import type { SensorEntry } from '../../../../geometry';
import { remove } from '../../../../shared/design/edit';
import { angleNumber } from '../../format';
import { SENSOR_ADDS } from '../../inspect/Outline';
import { Icon } from '../../panels/Icon';
import { Length } from '../../parts/Length';
import { litClass, useLit } from '../../parts/usePointing';
import type { Ref } from '../../session';
import { useAnswers } from '../answers';
import { act } from '../edits';
import { goTo, light, unlight } from '../go';
import { AddChips } from './AddChips';
import { type Of, Pending, Section } from './Section';

export function SensorSection({ design }: Of) {
  const known = useAnswers((s) => s.sensors);
  const entries = known.value ?? [];
  const count = design.sensors?.length ?? 0;
  const failing = entries.filter(({ remarks }) => remarks.some(({ fails }) => fails)).length;
  const says = count === 0 ? 'none' : failing > 0 ? `${failing} of ${count} stand badly` : `${count}`;
  return (
    <Section section="sensors" name="Sensors" says={says} fails={failing > 0} known={known}>
      {count > 0 && <Pending known={known} what="Measuring" />}
      {entries.map((entry) => (
        <Entry key={entry.id} entry={entry} />
      ))}
      {count === 0 && <p className="quiet">No bung is given yet.</p>}
      <AddChips adds={SENSOR_ADDS} what="Add a sensor" />
    </Section>
  );
}

function Entry({ entry }: { readonly entry: SensorEntry }) {
  const ref: Ref = { kind: 'sensor', id: entry.id };
  const lit = useLit(ref);
  const { room, spanner, toCollector, lean, remarks } = entry;
  return (
    <div
      className={`room-piece pickable${litClass(lit)}`}
      onPointerEnter={() => light(ref, null)}
      onPointerLeave={unlight}
    >
      <h3>
        <button
          type="button"
          className="link"
          onClick={() => goTo(entry.at, [ref], undefined, false)}
          title="Look at it"
        >
          {entry.id}
        </button>
        <button
          type="button"
          className="button bare icon"
          aria-label={`Remove ${entry.id}`}
          title="Remove"
          onClick={() => act((now) => remove(now, [{ kind: 'sensor', id: entry.id }]), `Remove sensor ${entry.id}`)}
        >
          <Icon name="close" />
        </button>
      </h3>
      <dl className="room-facts">
        <dt>Lean</dt>
        <dd>
          <data value={lean} className="number">
            {angleNumber(Math.abs(lean), 0)}°
          </data>{' '}
          {lean >= 0 ? 'above level' : 'below level'}
        </dd>
        {toCollector !== null && (
          <>
            <dt>Collector</dt>
            <dd>
              <Length mm={Math.abs(toCollector)} decimals={0} />{' '}
              {toCollector < 0 ? 'before its outlet' : 'behind its inlets'}
            </dd>
          </>
        )}
        <dt>Room</dt>
        <dd>
          {room ? (
            <>
              <Length mm={room.gap} decimals={1} /> to {room.by}
            </>
          ) : (
            'nothing near'
          )}
        </dd>
        <dt>Spanner</dt>
        <dd>{spanner.fits ? 'fits' : <span className="fails">no room: {spanner.by.join(', ')}</span>}</dd>
      </dl>
      {remarks.length > 0 && (
        <ul className="room-remarks">
          {remarks.map(({ message, fails }) => (
            <li key={message} className={fails ? 'fails' : undefined}>
              {message}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

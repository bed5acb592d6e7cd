/** One group on the rack: its target named once, then its runners with their ends. */
import type { Paint } from '../colours';
import { Length } from '../parts/Length';
import { type EndGroup, windowFor } from './ends';
import { RackRow } from './RackRow';
import type { Scale } from './scale';

type Props = { readonly group: EndGroup; readonly scale: Scale; readonly paints: ReadonlyMap<string, Paint> };

export function RackGroup({ group, scale, paints }: Props) {
  const window = windowFor(group.ends, group.tolerance);
  return (
    <section className="rack-group" aria-label={group.id === null ? 'Runners in no group' : `Group ${group.id}`}>
      <header className="rack-row rack-group-head">
        <h3>{group.id ?? 'No group'}</h3>
        <p className="quiet">
          {group.target === null ? (
            'no target'
          ) : (
            <>
              {group.free ? 'any length, but equal: mean ' : 'target '}
              <Length mm={group.target} /> ± <Length mm={group.tolerance} />
            </>
          )}
        </p>
        {group.target !== null && (
          <p className="quiet rack-window">
            ends magnified, ± <Length mm={window} decimals={window < 0.1 ? 3 : window < 1 ? 2 : 1} /> shown
          </p>
        )}
      </header>
      <ul>
        {group.strips.map((strip, i) => (
          <RackRow
            key={strip.id}
            strip={strip}
            deviation={group.ends[i]!.deviation}
            outside={group.ends[i]!.outside}
            target={group.target}
            tolerance={group.tolerance}
            window={window}
            scale={scale}
            paint={paints.get(strip.id)!}
          />
        ))}
      </ul>
    </section>
  );
}

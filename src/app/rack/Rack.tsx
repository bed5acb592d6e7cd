/**
 * The rack: every runner unrolled, hung side by side at one scale with its end against the group's target line, and the
 * last stretch seen through a glass, so that uneven ends are seen before a number is read.
 */
import './rack.css';
import { useMemo } from 'react';
import { useDisplay } from '../actions/display';
import { usePaints } from '../parts/usePaints';
import { useWidth } from '../parts/useWidth';
import { useShownEndGroups } from '../route/shown';
import { RackGroup } from './RackGroup';
import { RackKey } from './RackKey';
import { Ruler } from './Ruler';
import { scaleTo, spanOf } from './scale';

export function Rack() {
  const groups = useShownEndGroups();
  const paints = usePaints();
  const display = useDisplay();
  const [ref, width] = useWidth<HTMLDivElement>();
  const span = spanOf(groups);
  const scale = useMemo(() => scaleTo(span, width), [span, width]);

  return (
    <section className="rack" aria-label="Rack: runners unrolled to one scale">
      <div className="rack-row rack-head">
        <h2>Rack</h2>
        <div ref={ref} className="rack-strip">
          {width > 0 && <Ruler scale={scale} display={display} />}
        </div>
      </div>
      <div className="rack-body">
        {width > 0 &&
          groups.map((group) => <RackGroup key={group.id ?? ''} group={group} scale={scale} paints={paints} />)}
      </div>
      <RackKey />
    </section>
  );
}

/** Which way is which, in the trade's words: a small cross of three arrows that turns with the view. */
import { memo, useEffect, useRef } from 'react';
import { dot } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { EngineSides } from '../camera/presets';
import type { Rig } from '../camera/rig';
import { eyeAxes } from '../camera/view';

const REACH = 26;
const TEXT_GAP = 9;
/** An arrow that points nearly at the eye has no room for its word. */
const SHORTEST = 0.22;

export const Triad = memo(function Triad({ rig, sides }: { readonly rig: Rig; readonly sides: EngineSides }) {
  const ref = useRef<SVGSVGElement>(null);
  useEffect(() => {
    const arrows: readonly Vec3[] = [[sides.front, 0, 0], sides.out, [0, 0, 1]];
    const show = () => {
      const { right, up, back } = eyeAxes(rig.drawn());
      ref.current?.querySelectorAll('g').forEach((g, i) => {
        const arrow = arrows[i]!;
        const [x, y] = [dot(arrow, right), -dot(arrow, up)];
        const flat = Math.hypot(x, y);
        const line = g.querySelector('line')!;
        line.setAttribute('x2', (x * REACH).toFixed(1));
        line.setAttribute('y2', (y * REACH).toFixed(1));
        const tip = g.querySelector('circle')!;
        tip.setAttribute('cx', (x * REACH).toFixed(1));
        tip.setAttribute('cy', (y * REACH).toFixed(1));
        g.style.opacity = dot(arrow, back) < -0.1 ? '0.55' : '1';
        const text = g.querySelector('text')!;
        text.style.visibility = flat < SHORTEST ? 'hidden' : 'visible';
        const k = REACH + TEXT_GAP / Math.max(flat, SHORTEST);
        text.setAttribute('x', (x * k).toFixed(1));
        text.setAttribute('y', (y * k + 4).toFixed(1));
        text.setAttribute('text-anchor', x > 0.35 * flat ? 'start' : x < -0.35 * flat ? 'end' : 'middle');
      });
    };
    show();
    return rig.listen(show);
  }, [rig, sides]);
  return (
    <svg ref={ref} className="viewport-triad" viewBox="-90 -52 180 104" width="180" height="104" aria-hidden="true">
      {['front', 'out of head', 'up'].map((word) => (
        <g key={word}>
          <line x1="0" y1="0" x2="0" y2="0" />
          <circle r="2.6" />
          <text>{word}</text>
        </g>
      ))}
      <circle r="2" className="root" />
    </svg>
  );
});

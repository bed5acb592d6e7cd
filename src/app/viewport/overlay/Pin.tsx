/** The place of the problem being looked at: a pin that nothing hides. */
import { useEffect, useRef } from 'react';
import type { Vec3 } from '../../../../shared/vec3';
import type { Rig } from '../camera/rig';
import { project } from '../camera/view';
import { putStyle, putVisible } from './write';

export function Pin({ rig, at }: { readonly rig: Rig; readonly at: Vec3 }) {
  const ref = useRef<SVGSVGElement>(null);
  useEffect(() => {
    const show = () => {
      const node = ref.current;
      const place = project(rig.drawn(), rig.size(), at);
      if (!node) return;
      putVisible(node, place !== null);
      if (place) putStyle(node, 'transform', `translate(${place[0].toFixed(1)}px, ${place[1].toFixed(1)}px)`);
    };
    show();
    return rig.listen(show);
  }, [rig, at]);
  return (
    <svg ref={ref} className="viewport-pin" width="1" height="1" aria-hidden="true">
      <circle r="9" className="ring" />
      <circle r="2.5" className="dot" />
      <path d="M0 -9 V-22" className="stem" />
      <path d="M0 -22 a10 10 0 1 1 0.01 0 Z" className="head" />
      <path d="M0 -38.5 v8" className="bang" />
      <circle cx="0" cy="-27" r="1.1" className="bang-dot" />
    </svg>
  );
}

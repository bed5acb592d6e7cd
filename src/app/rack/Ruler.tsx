/** The rack's ruler: round lengths from the valve seat. */
import { memo } from 'react';
import type { Display } from '../../../shared/design/types';
import { rulerMarks, type Scale } from './scale';

const HEIGHT = 20;
const TICK = 5;

export const Ruler = memo(function Ruler({ scale, display }: { readonly scale: Scale; readonly display: Display }) {
  const marks = rulerMarks(scale, display);
  return (
    <svg width="100%" height={HEIGHT} className="ruler" aria-hidden="true">
      <title>Ruler</title>
      <line x1={0} x2={scale.x(scale.span)} y1={HEIGHT - 0.5} y2={HEIGHT - 0.5} />
      {marks.map(({ mm, label }, i) => (
        <g key={label} transform={`translate(${scale.x(mm)} 0)`}>
          <line y1={HEIGHT - TICK} y2={HEIGHT} x1={0.5} x2={0.5} />
          <text y={HEIGHT - TICK - 2} textAnchor={i === 0 ? 'start' : 'middle'}>
            {label}
            {i === 0 && <tspan className="unit"> {display}</tspan>}
          </text>
        </g>
      ))}
    </svg>
  );
});

/** A port's area schedule, drawn: area over length from the flange, its stations as dots. */
import type { AreaSchedule } from '../../../../geometry';
import { useDisplay } from '../../actions/display';
import { areaNumber, lengthNumber } from '../../format';
import { areaPlot, PLOT } from './areaPlot';

const { width, height, left, right, top, bottom } = PLOT;
const FOOT = height - bottom;

export function AreaPlotView({ schedule }: { readonly schedule: AreaSchedule }) {
  const display = useDisplay();
  const { line, stations, flange, tube, xMarks, yMarks } = areaPlot(schedule, display);
  const { openingArea, boreArea, length } = schedule;
  const unit = `${display}²`;
  const way = length > 0 ? `over ${lengthNumber(length, display, 1)} ${display}` : 'at once';
  return (
    <svg
      className="area-plot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Area: ${areaNumber(openingArea, display)} ${unit} at the opening, ${areaNumber(boreArea, display)} ${unit} in the tube, ${way}`}
    >
      {yMarks.map(({ at, label }) => (
        <g key={label}>
          <line className="grid" x1={left} x2={width - right} y1={at} y2={at} />
          <text x={left - 5} y={at + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {xMarks.map(({ at, label }) => (
        <g key={label}>
          <line className="axis" x1={at} x2={at} y1={FOOT} y2={FOOT + 4} />
          <text x={at} y={FOOT + 16} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <line className="axis" x1={left} x2={width - right} y1={FOOT} y2={FOOT} />
      <text className="unit" x={left - 5} y={11} textAnchor="end">
        {unit}
      </text>
      <text className="unit" x={width - right} y={height - 4} textAnchor="end">
        {display} from the flange's face
      </text>
      <line className="end" x1={flange} x2={flange} y1={top} y2={FOOT} />
      <text className="unit" x={length > 0 ? flange + 4 : flange - 4} y={11} textAnchor={length > 0 ? 'start' : 'end'}>
        opening
      </text>
      <line className="end" x1={tube} x2={tube} y1={top} y2={FOOT} />
      <text className="unit" x={tube + 4} y={11}>
        tube
      </text>
      <polyline className="area" points={line} />
      {length > 0 && stations.map(([x, y]) => <circle key={x} className="station" cx={x} cy={y} r={1.6} />)}
    </svg>
  );
}

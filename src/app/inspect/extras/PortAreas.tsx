/** How a port's area goes over into its tube's, drawn and in words, and what the stream meets on the way. */
import './portAreas.css';
import type { AreaSchedule } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { useDisplay } from '../../actions/display';
import { areaNumber } from '../../format';
import { Angle } from '../../parts/Angle';
import { Length } from '../../parts/Length';
import { AreaPlotView } from './AreaPlotView';
import { usePortAreas } from './usePortAreas';

export function PortAreas({ design, port }: { readonly design: Design; readonly port: string }) {
  const { schedule, error, waiting } = usePortAreas(design, port);
  if (!schedule && !error && waiting) return null;
  return (
    <div className={`inspector-section port-areas${waiting ? ' waiting' : ''}`}>
      <h3>Area from opening to tube</h3>
      {error && <p className="note fails">It could not be worked out: {error}</p>}
      {!schedule && !error && <p className="note">No runner starts at this port, so there is no tube to lead to.</p>}
      {schedule && (
        <>
          <AreaPlotView schedule={schedule} />
          <Words schedule={schedule} />
          {schedule.notMade.length > 0 && <Remarks className="thing-problems" of={schedule.notMade} />}
          {schedule.warnings.length > 0 && <Remarks className="thing-warnings" of={schedule.warnings} />}
        </>
      )}
    </div>
  );
}

function Words({ schedule }: { readonly schedule: AreaSchedule }) {
  const display = useDisplay();
  const { openingArea, boreArea, length, halfAngle, uneven } = schedule;
  const change = 100 * (boreArea / openingArea - 1);
  return (
    <p className="note">
      <span className="number">{areaNumber(openingArea, display)}</span> to{' '}
      <span className="number">{areaNumber(boreArea, display)}</span>
      <span className="unit"> {display}²</span> ({change < 0 ? '−' : '+'}
      {Math.abs(change).toFixed(1)} %)
      {halfAngle === null ? (
        ' at once: the tube starts at the flange.'
      ) : (
        <>
          {' over '}
          <Length mm={length} decimals={1} />, as a cone of <Angle degrees={halfAngle} /> half-angle; even within{' '}
          {Math.max(0.01, Math.ceil(100 * uneven) / 100).toFixed(2)} %.
        </>
      )}
    </p>
  );
}

type RemarksProps = { readonly of: readonly { readonly message: string }[]; readonly className: string };

function Remarks({ of, className }: RemarksProps) {
  return (
    <ul className={className}>
      {of.map(({ message }) => (
        <li key={message}>{message}</li>
      ))}
    </ul>
  );
}

/** What the colours of the tubes mean. */
import { useDisplay } from '../../actions/display';
import { useTheme } from '../../colours';
import { lengthNumber } from '../../format';
import { ROOMY, rampCss } from '../ramp';

export function Legend() {
  const theme = useTheme();
  const display = useDisplay();
  return (
    <div className="room-legend" role="img" aria-label="Room to spare beyond what is needed, from none to roomy">
      <span className="room-legend-short" />
      <span className="room-legend-word">too close</span>
      <span className="room-legend-number">0</span>
      <span className="room-legend-ramp" style={{ background: rampCss(theme) }} />
      <span className="room-legend-number">
        {lengthNumber(ROOMY, display, 0)} <span className="unit">{display}</span> and more to spare
      </span>
    </div>
  );
}

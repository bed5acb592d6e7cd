/** How much room there is to spare, as a bar from none to roomy; what is missing stands to the left of none, hatched. */
import { useDisplay } from '../../actions/display';
import { signedNumber } from '../../format';
import { ROOMY } from '../ramp';

const WIDTH = 44;
/** Where nothing is to spare, px: left of it what is missing. */
const NONE_AT = 10;

export function MarginBar({ margin }: { readonly margin: number }) {
  const display = useDisplay();
  const share = Math.min(1, Math.abs(margin) / ROOMY);
  const words = `${signedNumber(margin, display)} ${display} to spare`;
  const short = margin < 0;
  const length = short ? Math.max(3, share * NONE_AT) : share * (WIDTH - NONE_AT);
  return (
    <svg className="room-bar" width={WIDTH} height={12} viewBox={`0 0 ${WIDTH} 12`} role="img" aria-label={words}>
      <title>{words}</title>
      <rect x={NONE_AT} y={4.5} width={WIDTH - NONE_AT} height={3} className="room-bar-well" />
      <rect
        x={short ? NONE_AT - length : NONE_AT}
        y={3}
        width={length}
        height={6}
        className={short ? 'room-bar-short' : 'room-bar-spare'}
      />
      <rect x={NONE_AT - 0.5} y={0} width={1} height={12} className="room-bar-none" />
    </svg>
  );
}

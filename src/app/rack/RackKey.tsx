/** What the drawing on the rack means, in one line. */
import { memo, type ReactNode } from 'react';

const W = 22;
const H = 12;

export const RackKey = memo(function RackKey() {
  return (
    <ul className="rack-key" aria-label="Key">
      <li>
        <Sample>
          <path d="M1 11 5 1M6 11 10 1M11 11 15 1M16 11 20 1" />
        </Sample>
        in the head
      </li>
      <li>
        <Sample>
          <rect x={0.5} y={0.5} width={W - 1} height={H - 1} />
        </Sample>
        straight
      </li>
      <li>
        <Sample>
          <rect className="fill" x={0.5} y={0.5} width={W - 1} height={H - 1} />
        </Sample>
        bend, with its angle
      </li>
      <li>
        <Sample>
          <circle cx={11} cy={6} r={5.5} />
          <path d="M11 6 15 3M11 0v2.5" strokeWidth={1.6} />
        </Sample>
        rotation, seen along the travel
      </li>
      <li>
        <Sample>
          <path d={`M1 ${H - 1}H17M17 ${H}v-6`} strokeWidth={2} />
        </Sample>
        least straight
      </li>
    </ul>
  );
});

function Sample({ children }: { readonly children: ReactNode }) {
  return (
    <svg width={W} height={H} aria-hidden="true">
      {children}
    </svg>
  );
}

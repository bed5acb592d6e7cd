/** One starting size: a scale with a mark for every formula, where to start, and each formula with its source on demand. */
import type { Estimate, StartingSize } from '../../../shared/engine/sizing/startingSizes';
import { Length } from '../parts/Length';

type Props = {
  readonly size: StartingSize | undefined;
  /** What is in force, mm; null: nothing typed. */
  readonly now: number | null;
  /** What a formula's result comes to where it is taken, such as the nearest stock tube. */
  readonly taken: (mm: number) => number;
  readonly onUse: (mm: number) => void;
  /** What that is, where it is not what the formulas give. */
  readonly takenAs?: string;
};

const CONFIDENCE = {
  'read-in-source': 'read in the source',
  recomputed: 'worked out here',
  'from-memory': 'from memory',
} as const;

export function SizeStrip({ size, now, taken, onUse, takenAs }: Props) {
  if (!size) return null;
  const { least, greatest, estimates, start } = size;
  const span = Math.max(greatest.mm - least.mm, 1);
  const at = (mm: number) => `${4 + (92 * (mm - least.mm)) / span}%`;
  const use = taken(start);
  return (
    <div className="size">
      <div className="size-head">
        <span>
          <strong>{size.name}</strong> <span className="quiet">{size.measured}</span>
        </span>
        <button type="button" className="button small" disabled={now === use} onClick={() => onUse(use)}>
          {now === use ? 'In use' : 'Use'} <Length mm={use} decimals={1} />
          {takenAs && <> {takenAs}</>}
        </button>
      </div>
      <div className="size-scale" aria-hidden="true">
        {estimates.map((e) => (
          <span
            key={e.name}
            className={`size-mark ${e.bearing === 'size' ? '' : 'bound'}`}
            style={{ left: at(e.mm) }}
          />
        ))}
        <span className="size-start" style={{ left: at(start) }} />
      </div>
      <p className="size-spread">
        <span>
          <Length mm={least.mm} decimals={0} /> {least.name.toLowerCase()}
        </span>
        <span>
          {greatest.name.toLowerCase()} <Length mm={greatest.mm} decimals={0} />
        </span>
      </p>
      <details>
        <summary>{estimates.length} formulas and their sources</summary>
        <ul className="size-formulas">
          {estimates.map((e) => (
            <Formula key={e.name} estimate={e} taken={taken} onUse={onUse} />
          ))}
        </ul>
      </details>
    </div>
  );
}

function Formula({ estimate: e, taken, onUse }: Pick<Props, 'taken' | 'onUse'> & { readonly estimate: Estimate }) {
  return (
    <li>
      <div className="size-head">
        <span>
          <strong>{e.name}</strong> {e.bearing === 'size' ? '' : `${e.bearing} `}
          <Length mm={e.mm} decimals={1} />
        </span>
        <button type="button" className="link" aria-label={`Use ${e.name}`} onClick={() => onUse(taken(e.mm))}>
          use
        </button>
      </div>
      <p>{e.words}</p>
      {e.uses.length > 0 && <p className="quiet">From {e.uses.map(usedWords).join(', ')}.</p>}
      {e.assumes.length > 0 && <p className="quiet">Assumes: {e.assumes.join('; ')}.</p>}
      <p className="quiet">
        {e.source.text} ({CONFIDENCE[e.source.confidence]}).
      </p>
    </li>
  );
}

function usedWords({ name, value, unit, words, assumed }: Estimate['uses'][number]): string {
  const number = `${Math.round(value * 10) / 10}${unit.startsWith('°') ? '' : ' '}${unit}`;
  return `${name.toLowerCase()} ${words ?? number}${assumed ? ' (assumed)' : ''}`;
}

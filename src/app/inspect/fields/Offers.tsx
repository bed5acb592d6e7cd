/** A short list that opens at a number's right end: sizes that are sold, to take instead of typing one. */
export type OffersProps = {
  readonly name: string;
  readonly of: readonly { readonly value: number; readonly name: string }[];
};

type Props = OffersProps & {
  readonly label: string;
  readonly value: number | null;
  onChoose(value: number): string | null;
  onRefused(problem: string | null): void;
};

/** Sizes agree to a micrometre: tables are rounded to it. */
const SAME = 1e-3;

export function Offers({ name, of, label, value, onChoose, onRefused }: Props) {
  const at = value === null ? -1 : of.findIndex((offer) => Math.abs(offer.value - value) < SAME);
  return (
    <select
      className="offers"
      aria-label={`${label}: ${name.toLowerCase()}`}
      title={name}
      value={at}
      onKeyDown={(event) => event.stopPropagation()}
      onChange={(event) => onRefused(onChoose(of[Number(event.target.value)]!.value))}
    >
      <option value={-1} disabled>
        {name}
      </option>
      {of.map((offer, k) => (
        <option key={offer.name} value={k}>
          {offer.name}
        </option>
      ))}
    </select>
  );
}

/** A length with its unit, lighter than the number; the full value in mm is in the markup for whoever reads it by machine. */
import { useDisplay } from '../actions/display';
import { lengthNumber, signedNumber } from '../format';

type Props = {
  readonly mm: number;
  /** Decimals in mm; inches get one more. */
  readonly decimals?: number;
  readonly signed?: boolean;
  /** In a column whose head names the unit. */
  readonly bare?: boolean;
};

export function Length({ mm, decimals = 2, signed = false, bare = false }: Props) {
  const display = useDisplay();
  const text = signed ? signedNumber(mm, display, decimals) : lengthNumber(mm, display, decimals);
  return (
    <data value={mm} className="number">
      {text}
      {!bare && <span className="unit"> {display}</span>}
    </data>
  );
}

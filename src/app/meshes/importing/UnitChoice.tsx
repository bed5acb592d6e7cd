/** In which unit a file is: asked by the size that the mesh comes to in each, never guessed. */
import { MM_PER_UNIT } from '../../../../geometry';
import type { Display, LengthUnit } from '../../../../shared/design/types';
import { formatLength } from '../../../../shared/units';
import { useDisplay } from '../../actions/display';
import type { Corners } from '../facts';

const UNITS: readonly { readonly unit: LengthUnit; readonly name: string }[] = [
  { unit: 'mm', name: 'Millimetres' },
  { unit: 'cm', name: 'Centimetres' },
  { unit: 'm', name: 'Metres' },
  { unit: 'in', name: 'Inches' },
];

/** From here on sizes are told in metres: which of four units is right is then seen without counting digits. mm. */
const FAR = 10_000;

/** `812 × 455 × 390 mm`, `8.12 × 4.55 × 3.9 m`. */
export function sizeWords([low, high]: Corners, mmPerUnit: number, display: Display): string {
  const sizes = low.map((x, i) => mmPerUnit * (high[i]! - x));
  if (display === 'mm' && Math.max(...sizes) >= FAR)
    return `${sizes.map((size) => Number((size / 1000).toPrecision(3))).join(' × ')} m`;
  const digits = Math.max(...sizes) >= 1000 ? 0 : 1;
  return sizes
    .map((size, i) => formatLength(size, display, digits).replace(i < 2 ? /\s*(mm|in)$/ : /$^/, ''))
    .join(' × ');
}

type Props = {
  readonly box: Corners;
  readonly unit: LengthUnit | null;
  readonly isGlb: boolean;
  put(unit: LengthUnit): void;
};

export function UnitChoice({ box, unit, isGlb, put }: Props) {
  const display = useDisplay();
  return (
    <fieldset className="scanned-part">
      <legend>Unit of the file</legend>
      <p className="quiet">
        {isGlb
          ? 'GLB files are in metres by their standard; choose another where the size is not right.'
          : 'The file does not say. Choose by the size that it comes to.'}
      </p>
      {UNITS.map(({ unit: value, name }) => (
        <label key={value} className="scanned-radio">
          <input type="radio" name="scanned-unit" value={value} checked={unit === value} onChange={() => put(value)} />
          <span>{name}</span>
          <span className="quiet">{sizeWords(box, MM_PER_UNIT[value], display)}</span>
        </label>
      ))}
    </fieldset>
  );
}

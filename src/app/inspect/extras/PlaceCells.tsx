/** The columns of a place in a table: X, Y and Z, each to be typed. mm. */
import type { Vec3 } from '../../../../shared/vec3';
import { useDisplay } from '../../actions/display';
import { LengthField } from '../LengthField';

const AXES = ['X', 'Y', 'Z'] as const;
export type AxisName = (typeof AXES)[number];

/** The unit once, over the first of them. */
export function PlaceHeads() {
  const display = useDisplay();
  return AXES.map((name) => (
    <th key={name} scope="col" className="right">
      {name} {name === 'X' && <span className="unit">{display}</span>}
    </th>
  ));
}

type Props = {
  readonly place: Vec3;
  /** Whose place it is, as it is said aloud: `point 1 of runner r1`. */
  readonly of: string;
  readonly meaning?: string;
  readonly disabled?: boolean;
  onCommit(axis: 0 | 1 | 2, value: number, name: AxisName): string | null;
};

export function PlaceCells({ place, of, meaning, disabled, onCommit }: Props) {
  return ([0, 1, 2] as const).map((axis) => (
    <td key={axis}>
      <LengthField
        bare
        decimals={2}
        label={`${AXES[axis]} of ${of}`}
        meaning={meaning}
        value={place[axis]}
        disabled={disabled}
        onCommit={(value) => onCommit(axis, value, AXES[axis])}
      />
    </td>
  ));
}

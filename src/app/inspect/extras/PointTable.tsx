/** A runner's points, each coordinate to be typed, and the radius at each bend. Start and end follow port and collector. */
import type { Header } from '../../../../geometry';
import { checked } from '../../../../shared/design/edit';
import { LENGTH, narrowed } from '../../../../shared/design/ranges';
import type { Design } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { useDisplay } from '../../actions/display';
import { Length } from '../../parts/Length';
import { applyEdit } from '../applyEdit';
import { sayQuantity } from '../fields/quantity';
import { LengthField } from '../LengthField';
import { setCoordinate, withRadii } from '../shapeEdits';
import { PlaceCells, PlaceHeads } from './PlaceCells';

type Props = { readonly design: Design; readonly header: Header; readonly id: string };

export function PointTable({ design, header, id }: Props) {
  const resolved = header.runners.find(({ runner }) => runner.id === id);
  const points = resolved?.runner.points;
  if (!resolved || !points) return <p className="note">Not laid yet: it has no points.</p>;
  const { tooling, tube, runner } = resolved;
  return (
    <div className="inspector-section">
      <h3>Points</h3>
      <table className="cells" aria-label={`Points of ${id}`}>
        <thead>
          <tr>
            <th scope="col">Point</th>
            <PlaceHeads />
            <th scope="col" className="right">
              Radius
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((point, index) => (
            <Row
              // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place along the runner
              key={index}
              id={id}
              design={design}
              index={index}
              end={index === 0 ? 'start' : index === points.length - 1 ? 'end' : null}
              point={point}
              radius={runner.radii?.[index - 1] ?? null}
              usual={tooling.centerlineRadius}
              least={tube.outsideDiameter / 2}
              locked={runner.locked === true}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

type RowProps = {
  readonly id: string;
  readonly design: Design;
  readonly index: number;
  readonly end: 'start' | 'end' | null;
  readonly point: Vec3;
  readonly radius: number | null;
  readonly usual: number;
  readonly least: number;
  readonly locked: boolean;
};

function Row({ id, index, end, point, radius, usual, least, locked }: RowProps) {
  const display = useDisplay();
  if (end) {
    return (
      <tr className="quiet">
        <th scope="row">{end}</th>
        {([0, 1, 2] as const).map((axis) => (
          <td key={axis} className="right fixed">
            <Length mm={point[axis]} bare />
          </td>
        ))}
        <td />
      </tr>
    );
  }
  const name = `point ${index} of runner ${id}`;
  const say = (value: number) => sayQuantity(value, 'length', display);
  const setRadius = (value: number | undefined) =>
    applyEdit(
      (now) => checked(withRadii(now, id, [index], value)),
      `Radius at ${name}: ${value === undefined ? 'default' : say(value)}`,
      `runners/${id}/radii/${index - 1}`,
    );
  return (
    <tr>
      <th scope="row">{index}</th>
      <PlaceCells
        place={point}
        of={name}
        meaning="the bends beside it and the other runners follow"
        disabled={locked}
        onCommit={(axis, value, axisName) =>
          setCoordinate(id, index, axis, value, `${axisName} of ${name}: ${say(point[axis])} → ${say(value)}`)
        }
      />
      <td>
        <LengthField
          bare
          decimals={2}
          label={`Radius at ${name}`}
          meaning="to the centerline; empty: the tooling's own"
          value={radius}
          fallback={usual}
          range={narrowed(LENGTH, { least })}
          disabled={locked}
          onCommit={setRadius}
          onClear={() => setRadius(undefined)}
        />
      </td>
    </tr>
  );
}

/** Where a mesh stands: as it lies in its file, or so that three points picked on it come to three places of the design. */
import { MM_PER_UNIT, scale } from '../../../../geometry';
import { formatLength } from '../../../../shared/units';
import type { Vec3 } from '../../../../shared/vec3';
import { useDisplay } from '../../actions/display';
import { ChoiceField } from '../../inspect/ChoiceField';
import { always } from '../../inspect/fields/always';
import { VectorField } from '../../inspect/VectorField';
import { type ImportWish, type KnownPlace, type Target, withThree } from './wish';

type Props = {
  readonly wish: ImportWish;
  readonly places: readonly KnownPlace[];
  /** What each point misses its place by, mm. */
  readonly off: readonly number[] | null;
  /** The point that the next click on the mesh is for. */
  readonly at: number;
  put(wish: ImportWish): void;
  pickNext(point: number): void;
};

const TYPED = 'typed';
const NOTHING: Target = { typed: [null, null, null] };

export function Placing({ wish, places, off, at, put, pickNext }: Props) {
  const ways = [
    ['as it lies', 'As it lies in the file'],
    ['three points', 'By three points'],
  ] as const;
  return (
    <fieldset className="scanned-part">
      <legend>Where it stands</legend>
      {ways.map(([placing, name]) => (
        <label key={placing} className="scanned-radio">
          <input
            type="radio"
            name="scanned-placing"
            checked={wish.placing === placing}
            onChange={() => put({ ...wish, placing })}
          />
          <span>{name}</span>
        </label>
      ))}
      {wish.placing === 'three points' && (
        <>
          <p className="quiet">
            Click three points on the mesh, far apart and not in a line, and say which place of the design each is. It
            is turned and moved to fit them best, never stretched.
          </p>
          {[0, 1, 2].map((k) => (
            <Point key={k} {...{ wish, places, off, put, pickNext }} number={k} active={k === at} />
          ))}
        </>
      )}
    </fieldset>
  );
}

type PointProps = Omit<Props, 'at'> & { readonly number: number; readonly active: boolean };

function Point({ wish, places, off, put, pickNext, number, active }: PointProps) {
  const display = useDisplay();
  const k = MM_PER_UNIT[wish.unit ?? 'mm'];
  const from = wish.from[number]!;
  const target = wish.to[number] ?? null;
  const setTo = (next: Target | null) => put({ ...wish, to: withThree(wish.to, number, next) });
  const setFrom = (axis: number, mm: number) => {
    const moved = (from ?? [0, 0, 0]).map((x, i) => (i === axis ? mm / k : x)) as unknown as Vec3;
    put({ ...wish, from: withThree(wish.from, number, moved) });
  };
  const typed = target && 'typed' in target ? target.typed : null;
  return (
    <div className="scanned-point" data-active={active}>
      <div className="scanned-point-head">
        <span className="scanned-number">{number + 1}</span>
        <button type="button" className="button bare" aria-pressed={active} onClick={() => pickNext(number)}>
          {from ? 'Pick again' : active ? 'Click it on the mesh' : 'Pick on the mesh'}
        </button>
        {off && <span className="quiet">{formatLength(off[number]!, display)} off</span>}
      </div>
      <VectorField
        label={`Point ${number + 1}`}
        meaning="Along the file’s own axes"
        quantity="length"
        value={from && scale(from, k)}
        onCommit={always(setFrom)}
      />
      <ChoiceField
        label="In the design"
        value={target === null ? null : 'key' in target ? target.key : TYPED}
        fallback="choose…"
        choices={[
          ...places.map(({ key, name }) => ({ value: key, name })),
          { value: TYPED, name: 'a place that is typed' },
        ]}
        onCommit={always((value) => setTo(value === TYPED ? NOTHING : { key: value }))}
      />
      {typed && (
        <VectorField
          label={`Place ${number + 1}`}
          meaning="In the design"
          quantity="length"
          value={typed}
          onCommit={always((axis, mm) =>
            setTo({ typed: typed.map((x, i) => (i === axis ? mm : x)) as unknown as typeof typed }),
          )}
        />
      )}
    </div>
  );
}

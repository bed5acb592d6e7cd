/**
 * Every piece of metal that the header is made of, by what it belongs to, with its mass; before them what cannot be made and
 * what someone should know, each a click from its place. Pointing at a piece lights it in the picture.
 */
import './made.css';
import type { Header, PartRemark } from '../../../geometry';
import { DEFAULT_MATERIAL, partsNamed } from '../../../geometry';
import { materialOf } from '../../../shared/stock/materials';
import { useHeader } from '../derived';
import { kindName } from '../inspect/picked';
import { Icon } from '../panels/Icon';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { litClass, pointing, useLit } from '../parts/usePointing';
import { placeOf, refAtPath } from '../refs';
import { type Ref, useSession } from '../session';
import { type MassSum, massOfParts, type OwnerGroup, ownerGroups, partMass } from './list';
import type { ShownPart } from './shape';
import { pointAtPart, useMade } from './state';
import { ownerTitle, partName, remarkWords } from './words';

export function PartsPanel() {
  const { of, parts, notMade, warnings, making, error } = useMade();
  const header = useHeader();
  if (!header) return null;
  return (
    <section className="panel parts" aria-label="Parts" aria-busy={making !== null}>
      {error !== null && making === null && <p className="verdict fails">Parts were not made: {error}</p>}
      {!of && making !== null && <p className="quiet">Making parts…</p>}
      {of && (
        <>
          <Remarks title={missingWords(partsNamed(notMade).length)} remarks={notMade} header={header} fails />
          <Remarks title={doubtWords(warnings.length)} remarks={warnings} header={header} />
          {parts.length > 0 && <PartTable parts={parts} isStale={making !== null} />}
          {parts.length === 0 && notMade.length === 0 && <p className="quiet">Nothing here is made of metal yet.</p>}
        </>
      )}
    </section>
  );
}

const missingWords = (count: number) => (count === 1 ? '1 part cannot be made' : `${count} parts cannot be made`);
const doubtWords = (count: number) => (count === 1 ? '1 thing to know' : `${count} things to know`);

type RemarksProps = {
  readonly title: string;
  readonly remarks: readonly PartRemark[];
  readonly header: Header;
  readonly fails?: boolean;
};

function Remarks({ title, remarks, header, fails = false }: RemarksProps) {
  if (remarks.length === 0) return null;
  return (
    <div className={`verdict part-remarks${fails ? ' fails' : ''}`}>
      <h2>
        <Icon name="warn" />
        {title}
      </h2>
      <ul className="problem-list" data-mild={!fails || undefined}>
        {remarks.map((remark, i) => (
          // Remarks have no id of their own; two may be about one part.
          // biome-ignore lint/suspicious/noArrayIndexKey: the list is replaced as a whole
          <Remark key={`${remark.part} ${i}`} remark={remark} header={header} />
        ))}
      </ul>
    </div>
  );
}

/** How much of the neighbourhood to show, mm. */
const LOOK_RADIUS = 120;

function Remark({ remark, header }: { readonly remark: PartRemark; readonly header: Header }) {
  const ref = refAtPath(remark.where, header);
  const go = () => {
    const { select, ask } = useSession.getState();
    const at = ref && placeOf(ref, header);
    if (ref) select(ref);
    if (at) ask({ kind: 'look', at, radius: LOOK_RADIUS });
  };
  const { hover } = useSession.getState();
  const { title, words } = remarkWords(remark);
  return (
    <li>
      <button type="button" onClick={go} onPointerEnter={() => hover(ref)} onPointerLeave={() => hover(null)}>
        <strong>{title}:</strong> {words}
      </button>
    </li>
  );
}

function PartTable({ parts, isStale }: { readonly parts: readonly ShownPart[]; readonly isStale: boolean }) {
  return (
    <table className={isStale ? 'stale' : undefined}>
      <caption>Parts</caption>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Material</th>
          <th scope="col" className="right">
            Mass <span className="unit">kg</span>
          </th>
        </tr>
      </thead>
      {ownerGroups(parts).map((group) => (
        <GroupRows key={`${group.of.kind} ${group.of.id}`} group={group} />
      ))}
      <tfoot>
        <tr>
          <th scope="row" colSpan={2}>
            {parts.length === 1 ? '1 part' : `${parts.length} parts`} in all
          </th>
          <td className="right">
            <Sum sum={massOfParts(parts)} />
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

/** An owner of one part is one row; one of several has a head with their sum. */
function GroupRows({ group: { of, parts, sum } }: { readonly group: OwnerGroup }) {
  const ref = of as Ref;
  const [only, ...others] = parts;
  const isOne = others.length === 0;
  return (
    <tbody>
      <OwnerRow of={ref} part={isOne ? only! : null} sum={sum} />
      {!isOne && parts.map((part) => <PieceRow key={part.id} part={part} />)}
    </tbody>
  );
}

type OwnerProps = { readonly of: Ref; readonly part: ShownPart | null; readonly sum: MassSum };

function OwnerRow({ of, part, sum }: OwnerProps) {
  const lit = useLit(of);
  const paint = usePaints().get(of.kind === 'runner' ? of.id : '');
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(of)}>
      <th scope="row">
        {paint && <Swatch paint={paint} />} {ownerTitle(part ? partName(part) : kindName(of.kind), of.id)}
      </th>
      <td className="quiet">{part && <Material part={part} />}</td>
      <td className="right">{part ? <Mass part={part} /> : <Sum sum={sum} />}</td>
    </tr>
  );
}

function PieceRow({ part }: { readonly part: ShownPart }) {
  const handlers = pointing(part.of as Ref);
  return (
    <tr
      className="pick piece"
      tabIndex={0}
      {...handlers}
      onPointerEnter={() => pointAtPart(part.id)}
      onPointerLeave={() => pointAtPart(null)}
      onFocus={() => pointAtPart(part.id)}
      onBlur={() => pointAtPart(null)}
    >
      <th scope="row">{partName(part)}</th>
      <td className="quiet">
        <Material part={part} />
      </td>
      <td className="right">
        <Mass part={part} />
      </td>
    </tr>
  );
}

function Material({ part: { material } }: { readonly part: ShownPart }) {
  const name = materialOf(material ?? DEFAULT_MATERIAL)?.name ?? material;
  return <span title={material ? undefined : 'Not given: the default'}>{name}</span>;
}

const DECIMALS = 3;

function Mass({ part }: { readonly part: ShownPart }) {
  const mass = partMass(part);
  return mass === null ? (
    <span className="quiet">unknown density</span>
  ) : (
    <data value={mass} className="number">
      {mass.toFixed(DECIMALS)}
    </data>
  );
}

/** What is not known is said beside what is. */
function Sum({ sum: { mass, unknown } }: { readonly sum: MassSum }) {
  return (
    <>
      <data value={mass} className="number">
        {mass.toFixed(DECIMALS)}
      </data>
      {unknown > 0 && <span className="quiet"> and {unknown} of unknown density</span>}
    </>
  );
}

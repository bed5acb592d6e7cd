/** A flange's outline from a DXF drawing or a scanned gasket: the file, its unit or scale, how it lies, and what is taken. */
import './tracing.css';
import { type ChangeEvent, type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { type PlacedDrawing, takeDrawing, usualThreshold } from '../../../geometry';
import { checked } from '../../../shared/design/edit';
import { LENGTH } from '../../../shared/design/ranges';
import type { Design } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import { useDisplay } from '../actions/display';
import { applyEdit } from '../inspect/applyEdit';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { LengthField } from '../inspect/LengthField';
import { tell } from '../notices';
import { Icon } from '../panels/Icon';
import { FIRST_WISH, type Found, foundIn, type Placed, placedOn, type Side, type Wish } from './outcome';
import { PicturePane } from './PicturePane';
import { Preview } from './Preview';
import { readSource, type Source } from './readSource';
import { closeOutline } from './state';

type Props = { readonly design: Design; readonly flange: string };

export function OutlineSheet({ design, flange }: Props) {
  const [source, setSource] = useState<Source | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [wish, setWish] = useState(FIRST_WISH);
  useEffect(() => () => release(source), [source]);
  const found = useFound(source, wish);
  const placed = useMemo(
    () => (found?.ok ? placedOn(design, flange, found.loops, wish) : null),
    [design, flange, found, wish],
  );
  const drawing = placed?.ok ? placed.drawing : null;
  const choose = async (file: File) => {
    setProblem(null);
    try {
      setSource(await readSource(file));
      setWish(FIRST_WISH);
    } catch (error) {
      setSource(null);
      setProblem(error instanceof Error ? error.message : String(error));
    }
  };
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (!drawing) return;
    const said = applyEdit(
      (now) => checked(takeDrawing(now, drawing, wish)),
      `Outline of ${flange} from ${source!.name}`,
    );
    setProblem(said);
    if (said !== null) return;
    closeOutline();
    tell(`Flange ${flange} has the outline of ${source!.name}`, ...drawing.notes);
  };
  return (
    <form className="sheet-body" onSubmit={take} noValidate>
      <div className="sheet-search">
        <h2 id="traced-title">Outline of {flange}</h2>
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeOutline}>
          <Icon name="close" />
        </button>
      </div>
      <div className="traced-body">
        <div className="traced-see">
          {source?.kind === 'picture' && <PicturePane picture={source} wish={wish} put={setWish} />}
          <Preview design={design} flange={flange} drawing={drawing} />
        </div>
        <div className="traced-say">
          <ChooseFile source={source} onChoose={(file) => void choose(file)} />
          {source?.kind === 'dxf' && <UnitChoice wish={wish} put={setWish} found={found} />}
          {source?.kind === 'picture' && <ScaleFields picture={source} wish={wish} put={setWish} found={found} />}
          {found?.ok && <HowItLies wish={wish} put={setWish} drawing={drawing} />}
          <Notes found={found} placed={placed} />
        </div>
      </div>
      <div className="traced-foot">
        <p role="status">
          <Said problem={problem} found={found} placed={placed} wish={wish} />
        </p>
        <button type="button" className="button" onClick={closeOutline}>
          Cancel
        </button>
        <button type="submit" className="button strong" disabled={!drawing}>
          Take it
        </button>
      </div>
    </form>
  );
}

const release = (source: Source | null): void => {
  if (source?.kind === 'picture') URL.revokeObjectURL(source.url);
};

/** Tracing takes a good part of a second: done once points and slider rest. */
function useFound(source: Source | null, wish: Wish): Found | null {
  const { unit, points, distance, threshold } = wish;
  const [found, setFound] = useState<{ readonly of: Source; readonly what: Found } | null>(null);
  useEffect(() => {
    if (!source) return setFound(null);
    const asked: Wish = { ...FIRST_WISH, unit, points, distance, threshold };
    const later = setTimeout(
      () => setFound({ of: source, what: foundIn(source, asked) }),
      source.kind === 'picture' ? 250 : 0,
    );
    return () => clearTimeout(later);
  }, [source, unit, points, distance, threshold]);
  return found && found.of === source ? found.what : null;
}

function ChooseFile({ source, onChoose }: { readonly source: Source | null; onChoose(file: File): void }) {
  const input = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  const changed = (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    // Cleared so that the same file can be picked again after it was mended.
    if (file) onChoose(file);
    event.target.value = '';
  };
  return (
    <section className="traced-part">
      {!source && (
        <p>
          A DXF drawing, or a scan of the gasket as PNG or JPEG: at 300 dpi, on paper of another shade, a rule beside
          it. It stays on this machine.
        </p>
      )}
      <button type="button" className={`button${source ? '' : ' strong'}`} onClick={() => input.current?.click()}>
        {source ? 'Another file…' : 'Choose a file…'}
      </button>
      {source && <span className="traced-name">{source.name}</span>}
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        accept=".dxf,image/png,image/jpeg"
        aria-label="Drawing or scan"
        onChange={changed}
      />
    </section>
  );
}

type Part = { readonly wish: Wish; put(wish: Wish): void };

function UnitChoice({ wish, put, found }: Part & { readonly found: Found | null }) {
  const asked = found && !found.ok && found.wants === 'unit';
  if (!asked && wish.unit === null) return null;
  return (
    <section className="traced-part">
      <ChoiceField
        label="Drawn in"
        value={wish.unit ?? ''}
        choices={[
          ...(wish.unit === null ? [{ value: '', name: 'Choose…' }] : []),
          { value: 'mm', name: 'Millimetres' },
          { value: 'in', name: 'Inches' },
        ]}
        onCommit={always((unit) => put({ ...wish, unit: unit === 'mm' || unit === 'in' ? unit : null }))}
      />
    </section>
  );
}

type ScaleProps = Part & {
  readonly picture: Extract<Source, { kind: 'picture' }>;
  readonly found: Found | null;
};

function ScaleFields({ picture, wish, put, found }: ScaleProps) {
  const usual = useMemo(() => {
    try {
      return usualThreshold(picture.small);
    } catch {
      return 128;
    }
  }, [picture]);
  return (
    <section className="traced-part">
      <LengthField
        label="Between points"
        meaning="How far apart the two points truly are"
        range={LENGTH}
        value={wish.distance}
        fallback="not given"
        onCommit={always((distance) => put({ ...wish, distance }))}
      />
      <label className="traced-slider">
        <span className="quiet">Threshold</span>
        <input
          type="range"
          min={1}
          max={254}
          value={Math.round(wish.threshold ?? usual)}
          onChange={(event) => put({ ...wish, threshold: Number(event.target.value) })}
        />
        <span>{Math.round(wish.threshold ?? usual)}</span>
      </label>
      {found?.ok && found.dpi !== null && <p className="quiet">{found.dpi.toFixed(0)} dots an inch by these points.</p>}
    </section>
  );
}

function HowItLies({ wish, put, drawing }: Part & { readonly drawing: PlacedDrawing | null }) {
  const tick = (key: 'turned' | 'fasteners' | 'openings', words: string) => (
    <label className="traced-tick">
      <input type="checkbox" checked={wish[key]} onChange={(event) => put({ ...wish, [key]: event.target.checked })} />
      <span>{words}</span>
    </label>
  );
  return (
    <section className="traced-part">
      <ChoiceField
        label="Seen from"
        value={wish.side}
        choices={[
          { value: 'either', name: 'Whichever side fits' },
          { value: 'as drawn', name: 'The tubes’ side' },
          { value: 'turned over', name: 'The head’s side' },
        ]}
        onCommit={always((side) => put({ ...wish, side: side as Side }))}
      />
      {tick('turned', 'The other way round, where that fits as well')}
      {tick('fasteners', `Take ${counted(drawing?.holes.length, 'hole')} as fasteners`)}
      {tick('openings', `Take ${counted(drawing?.openings.length, 'opening')} for the ports`)}
    </section>
  );
}

const counted = (count: number | undefined, what: string): string =>
  count === undefined ? `${what}s` : `${count} ${what}${count === 1 ? '' : 's'}`;

/** Where the buttons are, so that it is seen whatever is scrolled: what is missing, what is wrong, or what would be taken. */
function Said({ problem, found, placed, wish }: Outcome & { readonly problem: string | null; readonly wish: Wish }) {
  if (problem) return <span className="fails">{problem}</span>;
  if (found && !found.ok) return <span className={found.wants ? 'traced-wanted' : 'fails'}>{found.problem}</span>;
  if (placed && !placed.ok) return <span className="fails">{placed.problem}</span>;
  return <What drawing={placed?.drawing ?? null} wish={wish} />;
}

type Outcome = { readonly found: Found | null; readonly placed: Placed | null };

function Notes({ found, placed }: Outcome) {
  const notes = [...(placed?.ok ? placed.drawing.notes : []), ...(found?.ok ? found.notes : [])];
  if (notes.length === 0) return null;
  return (
    <ul className="traced-notes">
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

function What({ drawing, wish }: { readonly drawing: PlacedDrawing | null; readonly wish: Wish }) {
  const display = useDisplay();
  if (!drawing) return <>Nothing is changed yet.</>;
  const fit = drawing.fit ? `, openings at most ${formatLength(drawing.fit.worst, display)} off the ports` : '';
  const also = [wish.fasteners ? 'its fasteners are replaced' : '', wish.openings ? 'the ports’ openings too' : '']
    .filter((words) => words !== '')
    .join(', ');
  return (
    <>
      {drawing.outline.length} straights and arcs{fit}
      {also ? `; ${also}` : ''}.
    </>
  );
}

/** Takes a scan or a mesh as a surrounding: the file, its unit, what it is, what of it counts, where it stands. */
import './import.css';
import { type ChangeEvent, type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { adoptCounted, countedKey, MM_PER_UNIT, scale, type TriangleSoup } from '../../../../geometry';
import { addSurrounding } from '../../../../shared/design/edit';
import { LENGTH } from '../../../../shared/design/ranges';
import type { Design } from '../../../../shared/design/types';
import { SURROUNDING_KINDS, surroundingKind } from '../../../../shared/stock/surroundingKinds';
import { formatLength } from '../../../../shared/units';
import { useDisplay } from '../../actions/display';
import { isMeshName, MESH_TYPES, meshFilesOf, type NamedFile } from '../../actions/readFiles';
import { headerOf } from '../../derived';
import { documents } from '../../document';
import { ChoiceField } from '../../inspect/ChoiceField';
import { always } from '../../inspect/fields/always';
import { addAndPick } from '../../inspect/inspectActions';
import { LengthField } from '../../inspect/LengthField';
import { VectorField } from '../../inspect/VectorField';
import { tell } from '../../notices';
import { Icon } from '../../panels/Icon';
import { Cancelled, type Task } from '../../workers/task';
import type { Corners } from '../facts';
import { lieOf } from '../lie';
import { type MeshProgress, startMeshTask, type Taken } from '../task';
import { Placing } from './Placing';
import { ScanPicture } from './ScanPicture';
import { closeImport, useImport } from './state';
import { sizeWords, UnitChoice } from './UnitChoice';
import { cropAll, firstWish, type ImportWish, knownPlaces, outcomeOf, withCorner, withThree } from './wish';

type Source = Taken & { readonly name: string };

export function ImportSheet({ design }: { readonly design: Design }) {
  const { source, progress, problem, read, stop } = useSource();
  const [wish, setWish] = useState<ImportWish>(firstWish(''));
  const [at, setAt] = useState(0);
  // A new file is asked about anew.
  const [of, setOf] = useState<Source | null>(null);
  if (source !== of) {
    setOf(source);
    setWish(firstWish(source?.name ?? ''));
    setAt(0);
  }
  const header = headerOf(design);
  const places = useMemo(() => knownPlaces(header), [header]);
  const outcome = useMemo(
    () => (source && of === source ? outcomeOf(source.name, source.box, wish, places) : null),
    [source, of, wish, places],
  );
  const counted = useCounted(source, wish);
  const isGone = counted.state === 'some' && counted.left === 0;
  const add = (event: FormEvent) => {
    event.preventDefault();
    if (!source || !outcome?.ok || isGone) return;
    const key = countedKey({ id: '', shape: 'mesh', ...outcome.mesh });
    if (key && counted.state === 'some') adoptCounted(key, source.soup, counted.soup);
    documents.addMeshes(new Map([[source.name, source.soup]]));
    addAndPick((now) => addSurrounding(now, outcome.mesh), `mesh ${source.name}`);
    closeImport();
    tell(`${source.name} is a surrounding now`);
  };
  const k = wish.unit && MM_PER_UNIT[wish.unit];
  const pick = (place: (typeof wish.from)[number]) => {
    const from = withThree(wish.from, at, place);
    setWish({ ...wish, from });
    const next = from.indexOf(null);
    setAt(next < 0 ? at : next);
  };
  const lie = useMemo(
    () =>
      outcome?.ok && (outcome.mesh.pose || wish.placing === 'as it lies')
        ? lieOf({ id: '', shape: 'mesh', ...outcome.mesh })
        : null,
    [outcome, wish.placing],
  );
  return (
    <form className="sheet-body" onSubmit={add} noValidate>
      <div className="sheet-search">
        <h2 id="scanned-title">A scan or mesh as a surrounding</h2>
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeImport}>
          <Icon name="close" />
        </button>
      </div>
      <div className="scanned-body">
        <div className="scanned-see">
          {source ? (
            <ScanPicture
              soup={source.soup}
              crop={wish.crop && k ? (wish.crop.map((c) => scale(c, 1 / k)) as unknown as Corners) : null}
              pull={wish.crop && k ? { crop: wish.crop, k, put: (crop) => setWish({ ...wish, crop }) } : null}
              points={wish.placing === 'three points' ? wish.from : NO_POINTS}
              header={header}
              lie={lie}
              picks={wish.placing === 'three points' ? pickWords(wish, at) : null}
              onPick={pick}
            />
          ) : (
            <Waiting progress={progress} onStop={stop} />
          )}
        </div>
        <div className="scanned-say">
          <ChooseFile source={source} busy={progress !== null} onChoose={read} />
          {source && <Found source={source} design={design} />}
          {source && (
            <UnitChoice
              box={source.box}
              unit={wish.unit}
              isGlb={/\.glb$/i.test(source.name)}
              put={(unit) => setWish({ ...wish, unit, crop: null })}
            />
          )}
          {source && wish.unit && (
            <>
              <WhatItIs wish={wish} put={setWish} />
              <Placing
                wish={wish}
                places={places}
                off={outcome?.ok ? outcome.off : null}
                at={at}
                put={setWish}
                pickNext={setAt}
              />
              <WhatCounts source={source} wish={wish} put={setWish} counted={counted} />
            </>
          )}
        </div>
      </div>
      <div className="scanned-foot">
        <p role="status">
          {problem ? (
            <span className="fails">{problem}</span>
          ) : outcome && !outcome.ok ? (
            <span className={outcome.problem ? 'fails' : 'scanned-wanted'}>{outcome.problem ?? outcome.wants}</span>
          ) : isGone ? (
            <span className="fails">Nothing of the mesh is left: widen the crop.</span>
          ) : outcome?.ok && outcome.warning ? (
            <span className="scanned-wanted">{outcome.warning}</span>
          ) : (
            'Nothing is changed yet.'
          )}
        </p>
        <button type="button" className="button" onClick={closeImport}>
          Cancel
        </button>
        <button
          type="submit"
          className="button strong"
          disabled={!outcome?.ok || counted.state === 'busy' || counted.state === 'failed' || isGone}
        >
          Add it
        </button>
      </div>
    </form>
  );
}

const pickWords = ({ from }: ImportWish, at: number): string =>
  from[at]
    ? `Click to move point ${at + 1}; drag turns the mesh.`
    : `Click point ${at + 1} on the mesh; drag turns it.`;

const NO_POINTS: ImportWish['from'] = [null, null, null];

/** The file that was chosen, dropped or handed over; a newer one ends an older one's reading. */
function useSource() {
  const [source, setSource] = useState<Source | null>(null);
  const [progress, setProgress] = useState<MeshProgress | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const running = useRef<Task<Taken> | null>(null);
  const read = useMemo(
    () =>
      async ({ name, file }: NamedFile) => {
        running.current?.cancel();
        running.current = null;
        setProblem(null);
        setSource(null);
        if (!isMeshName(name)) {
          setProgress(null);
          setProblem(`${name} is not a mesh that can be read: an STL, OBJ, PLY or GLB file is wanted.`);
          return;
        }
        setProgress({ doing: 'Reading', part: 0 });
        const task = startMeshTask({ do: 'read', name, file }, (told) => running.current === task && setProgress(told));
        running.current = task;
        try {
          const taken = await task.result;
          if (running.current === task) setSource({ ...taken, name });
        } catch (error) {
          if (running.current !== task || error instanceof Cancelled) return;
          const said = error instanceof Error ? error.message : String(error);
          setProblem(said.startsWith(name) ? said : `${name}: ${said}`);
        } finally {
          if (running.current === task) {
            running.current = null;
            setProgress(null);
          }
        }
      },
    [],
  );
  useEffect(() => () => running.current?.cancel(), []);
  const given = useImport((s) => s.file);
  useEffect(() => {
    if (given) void read(given);
  }, [given, read]);
  const stop = () => {
    running.current?.cancel();
    running.current = null;
    setProgress(null);
  };
  return { source, progress, problem, read, stop };
}

function ChooseFile(props: {
  readonly source: Source | null;
  readonly busy: boolean;
  onChoose(file: NamedFile): void;
}) {
  const { source, busy, onChoose } = props;
  const input = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  const changed = (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (file) onChoose({ name: file.name, file });
    // Cleared so that the same file can be picked again after it was mended.
    event.target.value = '';
  };
  return (
    <section className="scanned-part">
      {!source && !busy && (
        <p>STL, OBJ, PLY or GLB, up to two million triangles. Choose it or drop it here; it stays on this machine.</p>
      )}
      <button
        ref={button}
        type="button"
        className={`button${source || busy ? '' : ' strong'}`}
        onClick={() => input.current?.click()}
      >
        {source || busy ? 'Another file…' : 'Choose a file…'}
      </button>
      {source && <span className="scanned-name">{source.name}</span>}
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        accept={MESH_TYPES}
        aria-label="Scan or mesh file"
        onChange={changed}
      />
    </section>
  );
}

function Waiting({ progress, onStop }: { readonly progress: MeshProgress | null; onStop(): void }) {
  if (!progress) return <p className="scanned-empty quiet">The mesh is shown here.</p>;
  return (
    <div className="scanned-empty" role="status">
      <p>{progress.doing}…</p>
      <progress value={progress.part} max={1} aria-label={progress.doing} />
      <button type="button" className="button" onClick={onStop}>
        Cancel reading
      </button>
    </div>
  );
}

const thousands = (n: number): string => n.toLocaleString('en').replace(/,/g, ' ');

function Found({ source, design }: { readonly source: Source; readonly design: Design }) {
  const sizes = source.box[0].map((x, i) => Number((source.box[1][i]! - x).toPrecision(4)));
  return (
    <section className="scanned-part">
      <p>
        {thousands(source.soup.length / 9)} triangles, {sizes.join(' × ')} in the file’s own unit.
      </p>
      {source.notes.map((note) => (
        <p key={note} className="quiet">
          {note[0]!.toUpperCase() + note.slice(1)}.
        </p>
      ))}
      {meshFilesOf(design).includes(source.name) && (
        <p className="fails">
          The design names a mesh {source.name} already: it will be this file’s triangles too. Rename one of the files
          where they differ.
        </p>
      )}
    </section>
  );
}

type Part = { readonly wish: ImportWish; put(wish: ImportWish): void };

function WhatItIs({ wish, put }: Part) {
  const display = useDisplay();
  const usual = surroundingKind(wish.kind ?? '');
  return (
    <section className="scanned-part">
      <ChoiceField
        label="What it is"
        meaning="Proposes a clearance"
        value={wish.kind}
        fallback="not given"
        choices={SURROUNDING_KINDS.map(({ kind, label }) => ({ value: kind, name: label }))}
        onCommit={always((kind) => put({ ...wish, kind }))}
        onClear={always(() => put({ ...wish, kind: null }))}
      />
      <LengthField
        label="Clearance"
        meaning="Least gap from any tube"
        value={wish.clearance}
        fallback={usual ? usual.clearance : 10}
        onCommit={always((clearance) => put({ ...wish, clearance }))}
        onClear={always(() => put({ ...wish, clearance: null }))}
      />
      {usual && wish.clearance === null && (
        <p className="quiet">
          {formatLength(usual.clearance, display)} to the bare tube, without shields: common practice, from no standard.
        </p>
      )}
    </section>
  );
}

function WhatCounts({ source, wish, put, counted }: Part & { readonly source: Source; readonly counted: Counted }) {
  const display = useDisplay();
  const { crop, thin, unit } = wish;
  const all = source.soup.length / 9;
  return (
    <fieldset className="scanned-part">
      <legend>What of it counts</legend>
      <label className="scanned-radio">
        <input
          type="checkbox"
          checked={crop !== null}
          onChange={(event) => put({ ...wish, crop: event.target.checked ? cropAll(source.box, unit!) : null })}
        />
        <span>Only what reaches into a box</span>
      </label>
      {crop && (
        <>
          {([0, 1] as const).map((corner) => (
            <VectorField
              key={corner}
              label={corner === 0 ? 'Crop from' : 'Crop to'}
              meaning="Along the file’s own axes"
              quantity="length"
              value={crop[corner]}
              onCommit={always((axis, mm) => put({ ...wish, crop: withCorner(crop, corner, axis, mm) }))}
            />
          ))}
          <p className="quiet">{sizeWords(crop, 1, display)}</p>
        </>
      )}
      <LengthField
        label="Thin by"
        meaning="Fewer triangles; nothing moves farther than this"
        range={LENGTH}
        value={thin}
        fallback="not thinned"
        onCommit={always((mm) => put({ ...wish, thin: mm }))}
        onClear={always(() => put({ ...wish, thin: null }))}
      />
      <p className="quiet" role="status">
        {counted.state === 'all' && `All ${thousands(all)} triangles count.`}
        {counted.state === 'busy' && 'Counting…'}
        {counted.state === 'some' && `${thousands(counted.left)} of ${thousands(all)} triangles are left.`}
        {counted.state === 'failed' && <span className="fails">{counted.why}</span>}
      </p>
    </fieldset>
  );
}

type Counted =
  | { readonly state: 'all' | 'busy' }
  | { readonly state: 'some'; readonly left: number; readonly soup: TriangleSoup }
  | { readonly state: 'failed'; readonly why: string };

/** What is left of the triangles, worked out away from the page once the numbers rest. */
function useCounted(source: Source | null, { unit, crop, thin }: ImportWish): Counted {
  const [counted, setCounted] = useState<Counted>({ state: 'all' });
  useEffect(() => {
    const k = unit && MM_PER_UNIT[unit];
    if (!source || !k || (!crop && !thin)) return setCounted({ state: 'all' });
    setCounted({ state: 'busy' });
    const inUnit = crop && (crop.map((corner) => scale(corner, 1 / k)) as unknown as Corners);
    let task: Task<Taken> | null = null;
    const later = setTimeout(() => {
      task = startMeshTask({ do: 'count', soup: source.soup, crop: inUnit, thin: (thin ?? 0) / k });
      task.result.then(
        ({ soup }) => setCounted({ state: 'some', left: soup.length / 9, soup }),
        (error) =>
          error instanceof Cancelled ||
          setCounted({ state: 'failed', why: error instanceof Error ? error.message : '' }),
      );
    }, 200);
    return () => {
      clearTimeout(later);
      task?.cancel();
    };
  }, [source, unit, crop, thin]);
  return counted;
}

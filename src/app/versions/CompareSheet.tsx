/** Two versions, or two designs, held against each other in one table: what is measured, before, after, difference. */
import './versions.css';
import { useEffect, useState } from 'react';
import type { Comparison, Meshes } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { documents, useDocument } from '../document';
import { linesOf } from '../notices';
import { Icon } from '../panels/Icon';
import { changesOf } from '../panels/past/changes';
import { useModal } from '../parts/useModal';
import { shelf, useShelf } from '../shelf/browserShelf';
import { titleOf } from '../shelf/names';
import { startTask } from '../workers/task';
import { closeCompare, type Side, useCompare } from './compareState';
import { DifferenceTable } from './DifferenceTable';

export function CompareSheet() {
  const open = useCompare((s) => s.open);
  const modal = useModal(Boolean(open), closeCompare);
  return (
    <dialog {...modal} className="sheet compare" aria-label="Compare">
      {open && <Compared />}
    </dialog>
  );
}

type Answer = { readonly comparison: Comparison; readonly changes: readonly string[] } | { readonly error: string };

function Compared() {
  const { before, after } = useCompare((s) => s);
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(() => {
    let wanted = true;
    setAnswer(null);
    const stop = compare(before, after, (found) => wanted && setAnswer(found));
    return () => {
      wanted = false;
      stop();
    };
  }, [before, after]);
  return (
    <div className="sheet-body">
      <div className="compare-head">
        <h2>Compare</h2>
        <SideChoice label="Before" value={before} onChange={(side) => useCompare.setState({ before: side })} />
        <SideChoice label="After" value={after} onChange={(side) => useCompare.setState({ after: side })} />
        <button type="button" className="button bare icon" aria-label="Close" onClick={closeCompare}>
          <Icon name="close" />
        </button>
      </div>
      <div className="compare-body" aria-live="polite">
        {answer === null && <p className="note">Measuring both…</p>}
        {answer && 'error' in answer && <p className="note fails">These cannot be compared: {answer.error}</p>}
        {answer && 'comparison' in answer && <DifferenceTable {...answer} />}
      </div>
    </div>
  );
}

type ChoiceProps = { readonly label: string; readonly value: Side; onChange(side: Side): void };

function SideChoice({ label, value, onChange }: ChoiceProps) {
  const { versions, designs } = useShelf((s) => s);
  const id = useDocument((s) => s.id);
  const others = designs.filter((d) => d.id !== id);
  return (
    <label className="compare-side">
      <span className="quiet">{label}</span>
      <select className="filling" value={value} onChange={(event) => onChange(event.target.value as Side)}>
        <option value="now">This design now</option>
        {versions.length > 0 && (
          <optgroup label="Its versions">
            {versions.map((v) => (
              <option key={v.id} value={`version/${v.id}`}>
                {v.name}
              </option>
            ))}
          </optgroup>
        )}
        {others.length > 0 && (
          <optgroup label="Other designs">
            {others.map((d) => (
              <option key={d.id} value={`design/${d.id}`}>
                {titleOf(d)}
              </option>
            ))}
          </optgroup>
        )}
      </select>
    </label>
  );
}

/** Off the main thread; what it answers stops it. */
function compare(before: Side, after: Side, onAnswer: (answer: Answer) => void): () => void {
  let stop = () => {};
  let stopped = false;
  const work = async () => {
    const [a, b] = await Promise.all([before, after].map(sideOf));
    if (stopped || !a || !b) return;
    const beside = { before: a.meshes, after: b.meshes };
    const task = startTask({ job: 'compare', before: a.design, after: b.design, beside, meshes: null });
    stop = task.cancel;
    const comparison = await task.result;
    onAnswer({ comparison, changes: changesOf(a.design, b.design) });
  };
  work().catch((error) => {
    if (!stopped) onAnswer({ error: linesOf(error).join('; ') });
  });
  return () => {
    stopped = true;
    stop();
  };
}

async function sideOf(side: Side): Promise<{ readonly design: Design; readonly meshes: Meshes }> {
  const { settled, meshes } = documents.store.getState();
  const [kind, id = ''] = side.split('/');
  if (kind === 'design') return shelf.look(id);
  const version = useShelf.getState().versions.find((v) => v.id === id);
  if (kind === 'version' && !version) throw new Error('the version is no longer kept.');
  const design = version ? parseDesign(version.text) : settled;
  if (!design) throw new Error('no design is open.');
  return { design, meshes };
}

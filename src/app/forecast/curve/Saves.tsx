/** What can be taken away: the numbers as a table or as they are, and the picture. */
import { useState } from 'react';
import { useDisplay } from '../../actions/display';
import { useDocument } from '../../document';
import { linesOf } from '../../notices';
import { stemOf } from '../../shelf/names';
import { calibrationWords } from '../calibration';
import { useFit } from '../engine/fit';
import type { Run } from '../runs';
import type { PanelWish } from './frame';
import { saveCsv, saveJson, savePicture } from './save';

type Props = {
  readonly runs: readonly Run[];
  readonly panels: readonly PanelWish[];
  readonly speeds: readonly number[];
};

export function Saves({ runs, panels, speeds }: Props) {
  const [said, setSaid] = useState<{ readonly text: string; readonly fails: boolean } | null>(null);
  const display = useDisplay();
  const name = useDocument((s) => stemOf(s.fileName));
  const title = useDocument((s) => s.design?.title || stemOf(s.fileName));
  const last = useFit((s) => s.last);
  const calibration = useDocument((s) => calibrationWords(s.settled?.engine, last));
  const none = runs.every(({ told }) => told.every((t) => t === null));
  const save = async (what: string, work: () => Promise<string | null>) => {
    try {
      const saved = await work();
      if (saved !== null) setSaid({ text: `Saved as ${saved}`, fails: false });
    } catch (error) {
      setSaid({ text: `${what} was not saved: ${linesOf(error).join(' ')}`, fails: true });
    }
  };
  const button = (text: string, about: string, work: () => Promise<string | null>) => (
    <button type="button" className="button" title={about} disabled={none} onClick={() => void save(text, work)}>
      {text}
    </button>
  );
  return (
    <div className="gain-saves">
      {button('Save CSV', 'Every run and speed as a table', () => saveCsv(runs, name, calibration))}
      {button('Save JSON', 'Engines, ways of gas and answers as they are, SI units', () => saveJson(runs, name))}
      {button('Save picture', 'The curves as they are shown, as PNG', () =>
        savePicture(panels, speeds, display, title, name, calibration),
      )}
      <p role="status" className={said?.fails ? 'fails' : 'quiet'}>
        {said?.text}
      </p>
    </div>
  );
}

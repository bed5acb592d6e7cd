/** The way to take a plot away as a picture, and what became of it. Stands within its face. */
import { useState } from 'react';
import { useTheme } from '../../colours';
import { useDocument } from '../../document';
import { linesOf } from '../../notices';
import { stemOf } from '../../shelf/names';
import { savePlot } from './plotPicture';

type Props = {
  /** Which runs, cylinder and speed. */
  readonly title: string;
  /** Behind the design's in the file's name. */
  readonly what: string;
};

export function SavePlot({ title, what }: Props) {
  const [said, setSaid] = useState<{ readonly text: string; readonly fails: boolean } | null>(null);
  const theme = useTheme();
  const name = useDocument((s) => stemOf(s.fileName));
  const save = async (button: Element) => {
    const plot = button.closest('.wave-face')?.querySelector('.face-plot');
    if (!plot) return;
    try {
      const saved = await savePlot(plot, title, `${name} ${what}`, theme);
      if (saved !== null) setSaid({ text: `Saved as ${saved}`, fails: false });
    } catch (error) {
      setSaid({ text: `The picture was not saved: ${linesOf(error).join(' ')}`, fails: true });
    }
  };
  return (
    <span className="face-save">
      <button
        type="button"
        className="button"
        title="The plot as it is shown, as PNG"
        onClick={({ currentTarget }) => void save(currentTarget)}
      >
        Save picture
      </button>
      <span role="status" className={said?.fails ? 'fails' : 'quiet'}>
        {said?.text}
      </span>
    </span>
  );
}

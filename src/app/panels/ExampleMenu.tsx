/** The examples that come with the app. A plain disclosure: it closes on a choice, on Escape and on a click elsewhere. */
import { useEffect, useRef, useState } from 'react';
import { type Example, listExamples, openExample } from '../actions/open';
import { linesOf, tellFailure } from '../notices';
import { Icon } from './Icon';

export function ExampleMenu() {
  const [examples, setExamples] = useState<readonly Example[]>([]);
  const [open, setOpen] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);

  useEffect(() => {
    if (!open) return;
    listExamples().then(setExamples, (error) => {
      setOpen(false);
      tellFailure('The examples cannot be listed', ...linesOf(error));
    });
    const leave = (event: Event) => {
      if (!root.current?.contains(event.target as Node)) setOpen(false);
    };
    const close = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      setOpen(false);
      button.current?.focus();
    };
    document.addEventListener('pointerdown', leave);
    document.addEventListener('focusin', leave);
    document.addEventListener('keydown', close);
    return () => {
      document.removeEventListener('pointerdown', leave);
      document.removeEventListener('focusin', leave);
      document.removeEventListener('keydown', close);
    };
  }, [open]);

  return (
    <div className="menu" ref={root}>
      <button ref={button} type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        Examples <Icon name="down" />
      </button>
      {open && (
        <ul className="menu-list" aria-label="Examples">
          {examples.map(({ file, title, summary }) => (
            <li key={file}>
              <button
                type="button"
                onClick={() => {
                  setOpen(false);
                  void openExample(file);
                }}
              >
                <strong>{title}</strong>
                <span className="quiet">{summary}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

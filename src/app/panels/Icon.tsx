/** The few signs that are clearer than a word, drawn on a 16 px grid in the text's colour. */
const PATHS = {
  undo: 'M6.5 3.5 3 7l3.5 3.5M3.5 7H10a3 3 0 0 1 0 6H7',
  redo: 'M9.5 3.5 13 7l-3.5 3.5M12.5 7H6a3 3 0 0 0 0 6h3',
  sun: 'M8 5a3 3 0 1 0 0 6 3 3 0 0 0 0-6ZM8 1v1.6M8 13.4V15M1 8h1.6M13.4 8H15M3 3l1.1 1.1M11.9 11.9 13 13M13 3l-1.1 1.1M4.1 11.9 3 13',
  moon: 'M13.2 9.8A5.8 5.8 0 0 1 6.2 2.8a5.6 5.6 0 1 0 7 7Z',
  close: 'M4 4l8 8M12 4l-8 8',
  down: 'M4.5 6.5 8 10l3.5-3.5',
  find: 'M7 2.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9ZM10.4 10.4 14 14',
  more: 'M2.5 4.5h11M2.5 8h11M2.5 11.5h11',
  tick: 'M3 8.5 6.5 12 13 4.5',
  warn: 'M8 2.2 14.6 13.6H1.4ZM8 6.5v3.4M8 11.4v.9',
  locked: 'M4 7.5h8v6H4ZM5.5 7.5V5.2a2.5 2.5 0 0 1 5 0v2.3',
  unlocked: 'M4 7.5h8v6H4ZM5.5 7.5V4.4a2.5 2.5 0 0 1 4.8-1',
  seen: 'M1.5 8S4 3.8 8 3.8 14.5 8 14.5 8 12 12.2 8 12.2 1.5 8 1.5 8ZM8 6.2a1.8 1.8 0 1 0 0 3.6 1.8 1.8 0 0 0 0-3.6Z',
  hidden: 'M1.5 8S4 3.8 8 3.8 14.5 8 14.5 8 12 12.2 8 12.2 1.5 8 1.5 8ZM3 13 13 3',
} as const;

export function Icon({ name }: { readonly name: keyof typeof PATHS }) {
  return (
    <svg width={16} height={16} viewBox="0 0 16 16" aria-hidden="true" className="icon-drawing">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth={1.6}
        strokeLinejoin="round"
        strokeLinecap="round"
      />
    </svg>
  );
}

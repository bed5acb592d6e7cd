/** The project's mark: strips with their ends on one line. */
export function Mark() {
  return (
    <div className="mark">
      <svg width={22} height={22} viewBox="0 0 22 22" aria-hidden="true">
        <path d="M2 4.5h15M2 9h15M2 13.5h15M2 18h15" stroke="currentColor" strokeWidth={2.6} />
        <path d="M18.4 1.5v19.5" stroke="currentColor" strokeWidth={1.6} />
      </svg>
      <span>Evenrun</span>
    </div>
  );
}

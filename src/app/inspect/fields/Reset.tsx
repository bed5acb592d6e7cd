/** The way back from a value of one's own to the default. */
type Props = {
  readonly show: boolean;
  readonly label: string;
  readonly to?: number | string | undefined;
  readonly onReset?: (() => unknown) | undefined;
};

export function Reset({ show, label, onReset }: Props) {
  if (!show || !onReset) return null;
  return (
    <button
      type="button"
      className="link reset"
      aria-label={`${label}: use the default`}
      title="Use the default"
      onClick={() => onReset()}
    >
      default
    </button>
  );
}

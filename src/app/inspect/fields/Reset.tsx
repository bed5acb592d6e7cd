/** The way back from a value of one's own to the default: a small cross at the field's right end. */
import { Icon } from '../../panels/Icon';

type Props = {
  readonly show: boolean;
  readonly label: string;
  readonly onReset?: (() => unknown) | undefined;
};

export function Reset({ show, label, onReset }: Props) {
  if (!show || !onReset) return null;
  return (
    <button
      type="button"
      className="reset"
      aria-label={`${label}: use the default`}
      title="Use the default"
      onClick={() => onReset()}
    >
      <Icon name="close" />
    </button>
  );
}

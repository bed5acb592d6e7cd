/** One of a few, as a row of buttons that stay pressed. */

type Props<K extends string | number> = {
  readonly label: string;
  /** The label stands before it; else it is only read aloud. */
  readonly shown?: boolean;
  readonly options: readonly { readonly key: K; readonly name: string }[];
  readonly value: K;
  readonly onChoose: (key: K) => void;
};

export function Choice<K extends string | number>({ label, shown = false, options, value, onChoose }: Props<K>) {
  return (
    <div className="face-choice">
      {shown && <span aria-hidden="true">{label}</span>}
      <fieldset className="switch">
        <legend className="unseen">{label}</legend>
        {options.map(({ key, name }) => (
          <button key={key} type="button" aria-pressed={key === value} onClick={() => onChoose(key)}>
            {name}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

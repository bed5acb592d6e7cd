/** What stands beneath a field's control: what is wrong, and what the number is for. Their ids are for `aria-describedby`. */

type Props = {
  readonly id: string;
  readonly problem: string | null;
  /** Meaning and range. */
  readonly about: string;
  /** Keeps meaning and range in sight. */
  readonly explain?: boolean | undefined;
};

export function FieldFoot({ id, problem, about, explain = false }: Props) {
  return (
    <>
      <div className="field-problem" id={`${id}-problem`} role="status">
        {problem}
      </div>
      <div className={explain ? 'field-about' : 'unseen'} id={`${id}-about`}>
        {about}
      </div>
    </>
  );
}

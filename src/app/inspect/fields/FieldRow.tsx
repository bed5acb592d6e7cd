/** One line of an inspector: the label, what is edited, and beneath it what is wrong or, where asked for, what it means. */
import './fields.css';
import type { ReactNode } from 'react';
import { FieldFoot } from './FieldFoot';

export type FieldWords = {
  readonly label: string;
  /** What the number is for, in a few words; shown with its range while the field has the focus. */
  readonly meaning?: string | undefined;
  /** In a table, whose head is the label: the label is only said. */
  readonly bare?: boolean | undefined;
  /** Keeps meaning and range in sight beneath the field, for forms filled in for the first time. */
  readonly explain?: boolean | undefined;
};

type Props = FieldWords & {
  readonly id: string;
  readonly problem: string | null;
  /** Meaning and range. */
  readonly about: string;
  readonly children: ReactNode;
};

/** Ids of the texts that describe the control, for `aria-describedby`. */
export const describedBy = (id: string, problem: string | null): string =>
  problem === null ? `${id}-about` : `${id}-problem ${id}-about`;

export function FieldRow({ id, label, bare = false, explain, problem, about, children }: Props) {
  return (
    <div className={`field${bare ? ' bare' : ''}${problem === null ? '' : ' refused'}`}>
      <label htmlFor={id} className={bare ? 'unseen' : 'field-label'}>
        {label}
      </label>
      <div className="field-control">{children}</div>
      <FieldFoot id={id} problem={problem} about={about} explain={explain} />
    </div>
  );
}

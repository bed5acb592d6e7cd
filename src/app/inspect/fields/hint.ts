/** What the field with the focus means and may be; the hint line at the foot of the inspectors shows it. */
import { create } from 'zustand';

export type Hint = { readonly of: string; readonly label: string; readonly text: string };

export const useHint = create<{ readonly hint: Hint | null }>()(() => ({ hint: null }));

export const showHint = (hint: Hint): void => useHint.setState({ hint });

/** Only the field that showed the hint takes it away. */
export const hideHint = (of: string): void => useHint.setState(({ hint }) => (hint?.of === of ? { hint: null } : {}));

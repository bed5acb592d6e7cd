/** One thing that can be done, however it is asked for: a button, a key, the searchable list. */
export type Action = {
  /** Stable, such as `history.undo`. */
  readonly id: string;
  /** As a user reads it: a verb first, such as "Undo". */
  readonly name: string;
  /** Heading in the list: Design, Shape, View, Measure, Look … */
  readonly group: string;
  /** Keys that ask for it, each such as `Mod+Z`, `Shift+F` or `F`; Mod is Ctrl, or Command on a Mac. */
  readonly keys?: readonly string[];
  /** Said quietly beside the name, in place of the heading. */
  readonly detail?: string;
  /** Other words that someone may search by. */
  readonly also?: string;
  /** Whether it can be done now; absent: always. */
  ready?(): boolean;
  /** What is missing while it is not ready, such as "Pick two runners first". */
  why?(): string;
  run(): unknown;
};

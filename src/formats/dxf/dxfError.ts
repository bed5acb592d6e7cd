/** Why a DXF file was refused: a clause that follows the file's name, such as "it is cut short …". */
export class DxfError extends Error {
  override readonly name = 'DxfError';
}

/** Nothing is wrong but that its unit must be said: the file names none, or one that drawings are seldom in. */
export class DxfUnitError extends DxfError {
  /** What the file says; null: nothing. */
  constructor(readonly says: 'in' | null) {
    super(
      says === 'in'
        ? 'it says that it is in inches: say so too, or that it is in mm, as many files say it wrongly'
        : 'it does not say its unit: say whether it is in mm or in inches',
    );
  }
}

/** Line weights and type of every sheet, mm: a cut stands out from an edge, an edge from a helping line. */
import type { Stroke } from '../../formats/drawing/drawing';

/** Where the saw or the scriber goes. */
export const CUT: Stroke = { width: 0.5 };
export const EDGE: Stroke = { width: 0.35 };
export const THIN: Stroke = { width: 0.18 };
export const HATCH: Stroke = { width: 0.13 };
export const AXIS: Stroke = { width: 0.25, dash: [6, 1.2, 1, 1.2] };
export const DASHED: Stroke = { width: 0.25, dash: [3, 1.5] };

/** Capitals are 0.72 of these: none under 2.5 mm, which is read at arm's length. */
export const TYPE = { title: 6, label: 4.5, number: 4, plain: 3.5 } as const;
export const CAPITAL = 0.72;
/** From line to line of plain text. */
export const LINE = 4.8;

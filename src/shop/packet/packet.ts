/**
 * `packet.pdf`: everything on paper, for the workbench. Groups of sheets in the order of the work, after a first page that
 * says what is in it and what to mind. Add a group to `shopFolder.ts` and the packet holds it.
 */
import { writePdf } from '../../formats/pdf/write';
import type { Paper } from '../sheet/paper';
import { framed, type Sheet, type Stamp } from '../sheet/sheet';
import type { StripOptions } from '../templates/strip';
import { type Cover, coverSheets } from './cover';

export const PACKET = 'packet.pdf';

/** How paper is to come out: its size, how thick it is (which widens what is wrapped round a tube), and in which unit. */
export type PaperOptions = StripOptions & { readonly paper: Paper };

/** Of 80 g/m² office paper, mm. Common practice. */
export const DEFAULT_PAPER_THICKNESS = 0.1;

export type PacketGroup = {
  /** As the list of contents names it. */
  readonly name: string;
  /** What it is for, in a few words. */
  readonly use: string;
  readonly sheets: readonly Sheet[];
};

/** What the first page says of the design, beside what is in the packet. */
export type CoverState = Pick<Cover, 'problems' | 'fitting' | 'facts' | 'picture'>;

export async function packet(
  groups: readonly PacketGroup[],
  stamp: Stamp,
  state: CoverState,
  paper: Paper,
): Promise<Uint8Array<ArrayBuffer>> {
  const filled = groups.filter(({ sheets }) => sheets.length > 0);
  const cover = { design: stamp.design, display: stamp.display ?? 'mm', ...state } as const;
  const unnumbered = filled.map(({ name, use }) => ({ name, use, from: 0, to: 0 }));
  let page = coverSheets({ ...cover, contents: unnumbered }, paper).length + 1;
  const contents = filled.map(({ name, use, sheets }) => {
    const from = page;
    page += sheets.length;
    return { name, use, from, to: page - 1 };
  });
  const sheets = [...coverSheets({ ...cover, contents }, paper), ...filled.flatMap((g) => g.sheets)];
  const pages = sheets.map((sheet, i) => framed(sheet, stamp, { page: i + 1, of: sheets.length }));
  return writePdf(pages, `${stamp.design}: workshop packet`);
}

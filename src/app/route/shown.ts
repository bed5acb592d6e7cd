/** What picture, rack and tables show: the document or, while a layout is being looked at, that. */
import { type CheckReport, type Header, resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { remembered } from '../../../shared/remember';
import { share } from '../../../shared/share';
import { endGroupsOf, headerOf, useHeader, useReport } from '../derived';
import { documents } from '../document';
import type { EndGroup } from '../rack/ends';
import { choicesOf, previewed, useLay } from './state';

let last: Header | null = null;

/** Made of the parts of the document and of the layout before, where they are equal: those are not drawn again. */
const previewHeader = remembered((design: Design): Header => {
  const { settled } = documents.store.getState();
  const known = last ?? (settled && headerOf(settled));
  last = resolveHeader(known ? share(known.design, design) : design, known ?? undefined);
  return last;
});

/** Null while the document itself is shown. */
export function usePreview(): { readonly header: Header; readonly report: CheckReport } | null {
  const layout = useLay(previewed);
  return layout && { header: previewHeader(layout.design), report: layout.report };
}

export function useShownHeader(): Header | null {
  const open = useHeader();
  return usePreview()?.header ?? open;
}

/** Whether the numbers shown are not the document's: they are not to be typed over. */
export const useIsPreview = (): boolean => useLay((s) => previewed(s) !== null);

const NO_GROUPS: readonly EndGroup[] = [];

export function useShownEndGroups(): readonly EndGroup[] {
  const header = useShownHeader();
  return header ? endGroupsOf(header) : NO_GROUPS;
}

export function useShownReport(): CheckReport | null {
  const report = useReport((s) => s.report);
  return usePreview()?.report ?? report;
}

/** What is drawn over the document, in a few words; null: nothing. */
export function usePreviewName(): string | null {
  return useLay((s) => {
    const layout = previewed(s);
    if (!layout || !s.search) return null;
    if (!layout.report.ok) return s.search.running ? 'Nearest so far' : 'Best attempt';
    if (s.search.running) return 'Best so far';
    const count = choicesOf(s.search.harvest).length;
    return count === 1 ? 'The layout found' : `Layout ${(s.pointed ?? s.chosen) + 1} of ${count}`;
  });
}

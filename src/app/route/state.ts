/**
 * Laying the open header: the panel, the search under way and what it has found. The document stays as it is until one
 * layout is kept, as one step of history; what is looked at meanwhile is drawn over it.
 */
import { create } from 'zustand';
import { type Harvest, type Layout, nothingYet } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { share } from '../../../shared/share';
import { finishEditing } from '../actions/edit';
import { documents, whenOpened } from '../document';
import { finishLettingGo } from '../hand/hand';
import { useJobs } from '../jobs';
import { dismiss, tell } from '../notices';
import { useSession } from '../session';
import { createGathering, type Gathering } from './gathering';
import { hasWays } from './offer';
import { type Machine, type Pool, startPool, theMachine } from './pool';
import { designToLay, FIRST_WISH, type LayWish, laysAlike, routerOptions, toLay, whyNotLaid, wishFor } from './wish';
import { layoutWords } from './words';

export type Search = {
  /** The document when it began. */
  readonly from: Design;
  readonly wish: LayWish;
  readonly running: boolean;
  readonly harvest: Harvest;
  /** Rounds done. */
  readonly rounds: number;
  /** When this stretch began, by the page's clock, ms; and what was spent before it, s. */
  readonly began: number;
  readonly spent: number;
  /** Why it broke off, where it did. */
  readonly failed: string | null;
};

type Lay = {
  readonly open: boolean;
  readonly wish: LayWish;
  readonly search: Search | null;
  /** The row that would be kept, and the one that is pointed at. */
  readonly chosen: number;
  readonly pointed: number | null;
  /** The last search was ended because the design became another. */
  readonly overtaken: boolean;
};

const IDLE = { search: null, chosen: 0, pointed: null, overtaken: false } as const;

export const useLay = create<Lay>()(() => ({ open: false, wish: FIRST_WISH, ...IDLE }));

/** The layouts to choose from: those that hold, else the nearest miss. */
export const choicesOf = ({ layouts, best }: Harvest): readonly Layout[] =>
  layouts.length > 0 ? layouts : best ? [best] : [];

/** What is drawn over the document; null: nothing. */
export function previewed({ search, chosen, pointed }: Pick<Lay, 'search' | 'chosen' | 'pointed'>): Layout | null {
  if (!search) return null;
  if (search.running) return search.harvest.best;
  return choicesOf(search.harvest)[pointed ?? chosen] ?? null;
}

/** @param keepsShape presets that the runners keep the way they go now */
export function openLay(keepsShape = false): void {
  const { settled } = documents.store.getState();
  const { search, wish } = useLay.getState();
  if (!settled) return;
  // A search under way, or its layouts, are what there is to show.
  if (search) useLay.setState({ open: true });
  else useLay.setState({ open: true, overtaken: false, wish: wishFor(settled, wish, keepsShape) });
}

export function closeLay(): void {
  cancelSearch();
  useLay.setState({ open: false, overtaken: false });
}

export const put = (part: Partial<LayWish>): void => useLay.setState(({ wish }) => ({ wish: { ...wish, ...part } }));
/** What is chosen is looked at, wherever the pointer rests. */
export const choose = (chosen: number): void => useLay.setState({ chosen, pointed: null });
export function point(pointed: number | null): void {
  if (useLay.getState().pointed !== pointed) useLay.setState({ pointed });
}

let pool: Pool | null = null;
let gathering: Gathering = createGathering();
let drawing: ReturnType<typeof setTimeout> | null = null;
/** At most so often is a better layout drawn, ms: many may come at once. */
const DRAWN_EVERY = 150;

function draw(): void {
  if (drawing !== null) clearTimeout(drawing);
  drawing = null;
  const { search } = useLay.getState();
  if (!search) return;
  const harvest = gathering.harvest();
  useLay.setState({ search: { ...search, harvest, rounds: gathering.rounds } });
  // Where there was nothing but ports and collectors before, the picture was fitted to those.
  if (harvest.best && !search.harvest.best && !hasWays(search.from)) useSession.getState().ask({ kind: 'fit' });
}

function run(search: Search, machine: Machine): void {
  const { from, wish } = search;
  useLay.setState({ ...IDLE, search });
  const end = (failed: string | null): void => {
    draw();
    halt({ failed });
  };
  pool = startPool(
    {
      design: designToLay(from, wish),
      meshes: documents.store.getState().meshes,
      options: routerOptions(wish),
      seconds: wish.seconds,
      rounds: wish.rounds,
    },
    gathering,
    {
      changed() {
        drawing ??= setTimeout(draw, DRAWN_EVERY);
      },
      ended: () => end(null),
      failed: end,
    },
    machine,
  );
  useJobs.setState({ running: 'lay', stop: cancelSearch });
}

/** Ends the workers at once; what was found stays. */
function halt(change: Partial<Search> = {}): void {
  pool?.stop();
  pool = null;
  if (drawing !== null) clearTimeout(drawing);
  drawing = null;
  if (useJobs.getState().running === 'lay') useJobs.setState({ running: null, stop: null });
  const { search } = useLay.getState();
  if (!search) return;
  const spent = search.running ? search.spent + (performance.now() - search.began) / 1000 : search.spent;
  useLay.setState({ search: { ...search, running: false, spent, ...change } });
}

export function startSearch(machine = theMachine()): void {
  finishLettingGo();
  finishEditing();
  const { settled: from } = documents.store.getState();
  const { wish } = useLay.getState();
  if (!from || useJobs.getState().running || whyNotLaid(toLay(from)) !== null) return;
  dismiss();
  gathering = createGathering();
  const began = performance.now();
  run({ from, wish, running: true, harvest: nothingYet, rounds: 0, began, spent: 0, failed: null }, machine);
}

/** As long again, with rounds not run yet. */
export function searchOn(machine = theMachine()): void {
  const { search } = useLay.getState();
  if (!search || search.running || useJobs.getState().running) return;
  const wish = { ...search.wish, rounds: null };
  run({ ...search, wish, running: true, began: performance.now(), failed: null }, machine);
}

/** Ends the search with what it has found. */
export function stopSearch(): void {
  if (!useLay.getState().search?.running) return;
  draw();
  halt();
}

/** Gives up the search and what it has found. The document was never touched. */
export function cancelSearch(): void {
  halt();
  useLay.setState(IDLE);
}

/** What is chosen becomes the document's, as one step. Nothing where another tab has it: said elsewhere. */
export function keepChosen(): void {
  const before = useLay.getState();
  const { search, chosen } = before;
  const { settled } = documents.store.getState();
  const layout = search && !search.running ? choicesOf(search.harvest)[chosen] : undefined;
  if (!search || !settled || !layout) return;
  const { runners, merges } = layout.design;
  // First, so that the change is not taken for one that overtakes the search.
  useLay.setState({ ...IDLE, open: false });
  if (
    !documents.apply(
      share(settled, { ...settled, runners, merges }),
      hasWays(search.from) ? 'Lay anew' : 'Lay the header',
    )
  ) {
    useLay.setState(before);
    return;
  }
  tell(layout.report.ok ? 'Laid: every rule holds' : 'The best attempt is kept', layoutWords(layout, settled.display));
}

/** Layouts of a design that is no more are of no use. */
documents.store.subscribe(({ settled }, before) => {
  const { search } = useLay.getState();
  if (!search || settled === before.settled || !settled || laysAlike(settled, search.from)) return;
  cancelSearch();
  useLay.setState({ overtaken: true, wish: search.wish });
});

whenOpened(closeLay);

/** The app's one shelf, on this browser's storage, locks and clock. */
import { documents } from '../document';
import { prepared, sorted } from '../meshes/reading';
import { tellFailure } from '../notices';
import { browserBackend } from '../storage/browserBackend';
import { createKept } from '../storage/kept';
import { knowName, MOST_MESH_BYTES } from '../storage/meshBytes';
import { denied } from '../storage/trouble';
import { createHolds, noHolds } from './holds';
import { createShelf } from './shelf';
import { createShelfState } from './shelfState';

const NAME = 'evenrun';
/** Of this tab alone, so that reloading two tabs gives each its own design again. */
const TAB = 'evenrun.design';
/** All pages share it; a page alone may tidy. */
const PRESENT = 'evenrun present';

export const useShelf = createShelfState();

/** Storage that was refused stays so for as long as the page lives; what is kept in memory meanwhile is no comfort. */
let refusal: ReturnType<typeof denied> | null = null;
const backend = browserBackend(NAME, (error) => {
  refusal = denied(error);
  useShelf.setState({ trouble: refusal });
});
useShelf.subscribe(({ trouble }) => {
  if (refusal && trouble !== refusal) useShelf.setState({ trouble: refusal });
});

const stored = createKept(backend);

/** Meshes come back with their hierarchy, built away from the page. */
export const kept: typeof stored = {
  ...stored,
  async readMesh(name) {
    const soup = await stored.readMesh(name);
    if (!soup) return null;
    const ready = await sorted(soup);
    if (ready) knowName(ready, name);
    return ready;
  },
};

export const shelf = createShelf({
  documents,
  kept,
  state: useShelf,
  holds: (events) =>
    typeof navigator !== 'undefined' && navigator.locks && typeof BroadcastChannel === 'function'
      ? createHolds(navigator.locks, new BroadcastChannel(NAME), events)
      : noHolds,
  now: Date.now,
  later(work, ms) {
    const timer = setTimeout(work, ms);
    return () => clearTimeout(timer);
  },
  prepare: prepared,
  remember(id) {
    try {
      sessionStorage.setItem(TAB, id);
    } catch {
      // Refused: the design worked on last in any tab is opened next time.
    }
  },
  tooLarge: (file) =>
    tellFailure(
      `${file} is too large to keep in this browser`,
      `At most ${MOST_MESH_BYTES / 2 ** 20} MB of triangles. The design is kept; open ${file} again with it next time.`,
    ),
});

let started: Promise<boolean> | null = null;

/** Opens what was worked on last, once however often it is asked. False where there is nothing. */
export function startShelf(): Promise<boolean> {
  started ??= start();
  return started;
}

async function start(): Promise<boolean> {
  await tidyAlone();
  const found = await shelf.start([rememberedHere()]);
  void shelf.tidy().catch(() => {});
  return found;
}

function rememberedHere(): string | null {
  try {
    return sessionStorage.getItem(TAB);
  } catch {
    return null;
  }
}

/** Clears unused meshes away where no other page is open, then counts as present until it ends. */
async function tidyAlone(): Promise<void> {
  if (!navigator.locks) return;
  try {
    await navigator.locks.request(PRESENT, { ifAvailable: true }, async (alone) => {
      if (alone) await kept.tidy();
    });
  } catch {
    // What is not tidied takes room and nothing else.
  }
  await new Promise<void>((present) => {
    void navigator.locks.request(PRESENT, { mode: 'shared' }, () => {
      present();
      return new Promise(() => {});
    });
  });
}

/** Whether closing the page would lose something: edits that neither a file nor this browser holds. */
export const wouldLose = (): boolean => {
  const { settled, saved } = documents.store.getState();
  return shelf.waits() || (refusal !== null && settled !== saved);
};

/** A picture of the view, as actions. The view itself, once it is there, lends the hand that takes it. */
import type { Action } from '../../actions/list/action';
import { saveBlob } from '../../actions/save';
import { documents } from '../../document';
import { linesOf, tell, tellFailure } from '../../notices';

export type PictureWish = {
  /** Dark ink on white, whatever the theme: for paper. */
  readonly paper: boolean;
};
type Taker = (wish: PictureWish) => Promise<Blob>;

let taker: Taker | null = null;

/** Called by the view while it is there. @returns what takes the offer back */
export function offerPicture(take: Taker): () => void {
  taker = take;
  return () => {
    if (taker === take) taker = null;
  };
}

const WHY = 'There is no 3D view to take it of';

async function savePicture(wish: PictureWish): Promise<void> {
  try {
    if (!taker) throw new Error(WHY);
    const blob = await taker(wish);
    const name = await saveBlob(blob, `${stem()}${wish.paper ? ' on paper' : ''}.png`, 'Picture', '.png');
    if (name !== null) tell(`Saved as ${name}`);
  } catch (error) {
    tellFailure('The picture was not saved', ...linesOf(error));
  }
}

async function copyPicture(): Promise<void> {
  try {
    if (!taker) throw new Error(WHY);
    // Handed over as a promise: the browser then still counts it as the user's own wish when the picture is ready.
    const item = new ClipboardItem({ 'image/png': taker({ paper: false }) });
    await navigator.clipboard.write([item]);
    tell('The picture lies on the clipboard');
  } catch (error) {
    tellFailure('The picture was not copied', ...linesOf(error), 'Save it as a file instead.');
  }
}

const stem = (): string => documents.store.getState().fileName.replace(/(\.evenrun)?\.json$/i, '') || 'view';

const canTake = { ready: () => taker !== null && documents.store.getState().design !== null, why: () => WHY };

export const pictureActions: readonly Action[] = [
  {
    id: 'picture.save',
    name: 'Save a picture of the view',
    group: 'Picture',
    keys: ['Shift+P'],
    also: 'image png screenshot export',
    ...canTake,
    run: () => savePicture({ paper: false }),
  },
  {
    id: 'picture.paper',
    name: 'Save a picture for paper, on white',
    group: 'Picture',
    also: 'image png print light background export',
    ...canTake,
    run: () => savePicture({ paper: true }),
  },
  {
    id: 'picture.copy',
    name: 'Copy a picture of the view',
    group: 'Picture',
    also: 'image clipboard',
    ready: () => canTake.ready() && typeof ClipboardItem !== 'undefined',
    why: () => (canTake.ready() ? 'This browser does not let pages copy pictures' : WHY),
    run: copyPicture,
  },
];

/** The workshop of another design, kept in this browser or in a file, in place of the open one's: one step. */
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { linesOf, tell, tellFailure } from '../notices';
import { act } from '../room/edits';
import { shelf } from '../shelf/browserShelf';
import { takeWorkshop } from './shelf';

const NONE =
  'It says nothing of a workshop; nothing was changed. Describe one there first, or take it from another design.';

function take(from: Design, name: string): void {
  const { workshop } = from;
  if (!workshop) {
    tellFailure(`“${name}” has no workshop`, NONE);
    return;
  }
  act((now) => takeWorkshop(now, workshop), `Take the workshop of “${name}”`);
  tell(`The workshop of “${name}” is taken`, 'Undo gives the one before back.');
}

export async function takeFromKept(id: string, name: string): Promise<void> {
  try {
    const { design } = await shelf.look(id);
    take(design, name);
  } catch (error) {
    tellFailure(`The workshop of “${name}” was not taken`, ...linesOf(error));
  }
}

export async function takeFromFile(file: File): Promise<void> {
  try {
    take(parseDesign(await file.text()), file.name);
  } catch (error) {
    tellFailure(`The workshop of ${file.name} was not taken`, ...linesOf(error));
  }
}

/** From a place in the design to where it is mended: a field of this page, or the part itself on the bench. */
import { headerOf } from '../derived';
import { documents } from '../document';
import { useLeaf } from '../leaf';
import { refAtPath } from '../refs';
import { type Ref, useSession } from '../session';
import { turnTo } from './shown';
import { closeForecast } from './state';

export type Way =
  | { readonly to: 'field'; readonly path: string; readonly name: string }
  | { readonly to: 'part'; readonly ref: Ref; readonly name: string };

export function wayTo(path: string): Way | null {
  if (/^(engine|exhaust)(\/|$)/.test(path)) return { to: 'field', path, name: 'Go to the field' };
  const { settled } = documents.store.getState();
  const ref = settled && refAtPath(path, headerOf(settled));
  return ref ? { to: 'part', ref, name: 'Show it on the bench' } : null;
}

export function goTo(way: Way): void {
  if (way.to === 'part') {
    closeForecast();
    useSession.getState().select(way.ref);
    useLeaf.getState().ask('edit');
    return;
  }
  turnTo('engine');
  // Once it is drawn.
  setTimeout(() => {
    const field = fieldAt(way.path);
    field?.scrollIntoView({ block: 'center' });
    field?.querySelector<HTMLElement>('input, select, textarea, button')?.focus();
  });
}

/** The field of a path, or of the nearest place above it that has one. */
function fieldAt(path: string): HTMLElement | null {
  for (let at = path; at !== ''; at = at.slice(0, Math.max(0, at.lastIndexOf('/')))) {
    const field = document.querySelector<HTMLElement>(
      `.forecast [data-path="${CSS.escape(at)}"], .forecast [data-path^="${CSS.escape(at)}/"]`,
    );
    if (field) return field;
  }
  return null;
}

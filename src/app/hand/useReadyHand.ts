/** Readies the hand's worker once something is picked, which is how every drag begins; mounted once by the app. */
import { useEffect } from 'react';
import { documents } from '../document';
import { useSession } from '../session';
import { readyHand } from './link';

/** Lets the picture of what was picked come first, ms. */
const LATER = 60;

export function useReadyHand(): void {
  useEffect(
    () =>
      useSession.subscribe(({ selected }, before) => {
        if (!selected || before.selected) return;
        setTimeout(() => {
          const { design, meshes } = documents.store.getState();
          if (design) readyHand(design, meshes);
        }, LATER);
      }),
    [],
  );
}

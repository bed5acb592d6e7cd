/** How paper is to come out of this browser: for the shop folder and for templates. Remembered here, not in a design. mm. */
import { create } from 'zustand';
import type { PaperOptions } from '../shop/packet/packet';
import type { Action } from './actions/list/action';
import { tell } from './notices';

export type PaperChoice = Required<Pick<PaperOptions, 'paper' | 'paperThickness' | 'stations'>>;

const KEY = 'evenrun.paper';
export const THICKNESS = { least: 0, most: 2 } as const;
export const USUAL: PaperChoice = { paper: 'a4', paperThickness: 0.1, stations: 16 };

export const usePaper = create<PaperChoice>()(() => remembered());

export function choosePaper(change: Partial<PaperChoice>): void {
  usePaper.setState(change);
  try {
    localStorage.setItem(KEY, JSON.stringify(usePaper.getState()));
  } catch {
    // Storage may be refused; the choice then lasts as long as the page.
  }
}

/** What was kept may be of another version, or anyone's: each part counts only where it can be. */
export function remembered(): PaperChoice {
  try {
    const kept: Partial<Record<keyof PaperChoice, unknown>> = JSON.parse(localStorage.getItem(KEY) ?? '{}') ?? {};
    const { paper, paperThickness: thick, stations } = kept;
    return {
      paper: paper === 'a4' || paper === 'letter' ? paper : USUAL.paper,
      paperThickness:
        typeof thick === 'number' && thick >= THICKNESS.least && thick <= THICKNESS.most ? thick : USUAL.paperThickness,
      stations: stations === 8 || stations === 16 ? stations : USUAL.stations,
    };
  } catch {
    return USUAL;
  }
}

export const PAPER_WORDS = { a4: 'A4', letter: 'Letter' } as const;

export const paperActions: readonly Action[] = (['a4', 'letter'] as const).map((paper) => ({
  id: `paper.${paper}`,
  name: `Paper: ${PAPER_WORDS[paper]}`,
  group: 'Design',
  also: 'print size shop folder template pdf sheet',
  ready: () => usePaper.getState().paper !== paper,
  why: () => 'That is the paper already',
  run: () => {
    choosePaper({ paper });
    tell(`Shop folder and templates come on ${PAPER_WORDS[paper]} from now on, in this browser`);
  },
}));

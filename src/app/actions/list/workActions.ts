/** The work on a design as a whole, as actions: balance, the shop folder, units, light and dark. */
import { documents } from '../../document';
import { useJobs } from '../../jobs';
import { useThemeStore } from '../../theme';
import { balanceDesign } from '../balance';
import { setDisplay } from '../display';
import { exportShop } from '../exportShop';
import type { Action } from './action';

export const hasDesign = (): boolean => documents.store.getState().design !== null;
export const OPEN_FIRST = 'Open a design first';
/** For what can be done with any design, once one is open. */
export const needsDesign = { ready: hasDesign, why: () => OPEN_FIRST };

const isFree = (): boolean => hasDesign() && useJobs.getState().running === null;
const whyNotFree = (): string => (hasDesign() ? 'Something else is still under way' : OPEN_FIRST);

const display = () => documents.store.getState().settled?.display ?? 'mm';

export const workActions: readonly Action[] = [
  {
    id: 'work.balance',
    name: 'Balance',
    group: 'Design',
    keys: ['Mod+B'],
    also: 'equal length solve mend',
    ready: isFree,
    why: whyNotFree,
    run: balanceDesign,
  },
  {
    id: 'work.shop',
    name: 'Write the shop folder',
    group: 'Design',
    keys: ['Mod+E'],
    also: 'export bend schedule cut list stl zip files',
    ready: isFree,
    why: whyNotFree,
    run: exportShop,
  },
  {
    id: 'work.unit',
    name: 'Switch between mm and in',
    group: 'Design',
    keys: ['U'],
    also: 'millimetres inches unit metric imperial',
    ...needsDesign,
    run: () => setDisplay(display() === 'mm' ? 'in' : 'mm'),
  },
  {
    id: 'work.theme',
    name: 'Switch between light and dark',
    group: 'View',
    also: 'theme colours night',
    run: () => {
      const { theme, choose } = useThemeStore.getState();
      choose(theme === 'light' ? 'dark' : 'light');
    },
  },
];

/** The rules by which thinning is foretold, as paper names them. */
import type { Workshop } from '../../../shared/design/types';

type Rule = NonNullable<Workshop['thinning']>;

const WORDS: Readonly<Record<Rule, { readonly wall: string; readonly outOfRound: string }>> = {
  geometric: { wall: 'by geometry', outOfRound: '8 % of the diameter, ASME B31.1' },
  tema: { wall: 'TEMA RCB-2.31', outOfRound: '10 % of the diameter, TEMA' },
  'b31.1': { wall: 'ASME B31.1, 102.4.5', outOfRound: '8 % of the diameter, ASME B31.1' },
};

export const thinningWords = (rule: Rule) => WORDS[rule];

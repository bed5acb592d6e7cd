/** Which sizes the study is to go over, where somebody said so: of the open design, for as long as it is open. mm */
import { create } from 'zustand';
import { ARRANGEMENTS, type Arrangement } from '../../../../shared/engine/form';
import { SIZE_RANGES, type StudyChoice } from '../../../pulse/forecast/studySizes';

type Chosen = { readonly of: string | null; readonly choice: StudyChoice };

export const useChoice = create<Chosen>()(() => ({ of: null, choice: {} }));

const NOTHING: StudyChoice = {};

/** @param id of the design */
export const choiceOf = ({ of, choice }: Chosen, id: string): StudyChoice => (of === id ? choice : NOTHING);
export const choiceNow = (id: string): StudyChoice => choiceOf(useChoice.getState(), id);
export const isChosen = (id: string): boolean => useChoice.getState().of === id;

/** An empty list, or null, is as usual. */
export function setChoice<K extends keyof StudyChoice>(id: string, key: K, list: StudyChoice[K] | null): void {
  const { [key]: _, ...others } = choiceNow(id);
  useChoice.setState({ of: id, choice: list && list.length > 0 ? { ...others, [key]: list } : others });
}

export const adoptChoice = (id: string, choice: StudyChoice): void => useChoice.setState({ of: id, choice });

/** What a kept study was asked for; whatever of it cannot be is as usual. */
export function readChoice(asked: unknown): StudyChoice {
  if (asked === null || typeof asked !== 'object') return NOTHING;
  const given = asked as Record<string, unknown>;
  const numbers = (key: keyof typeof SIZE_RANGES): StudyChoice => {
    const [least, most] = SIZE_RANGES[key];
    const list = given[key];
    const isGood = Array.isArray(list) && list.length > 0 && list.every((mm) => mm >= least && mm <= most);
    return isGood ? { [key]: list } : {};
  };
  const { arrangements } = given;
  const areKnown =
    Array.isArray(arrangements) && arrangements.length > 0 && arrangements.every((a) => ARRANGEMENTS.includes(a));
  return {
    ...{ ...numbers('lengths'), ...numbers('bores'), ...numbers('outlets') },
    ...(areKnown ? { arrangements: arrangements as Arrangement[] } : {}),
  };
}

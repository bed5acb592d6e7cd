/** Which sizes the study is to go over, where somebody said so: of the open design, for as long as it is open. mm */
import { create } from 'zustand';
import { ARRANGEMENTS, type Arrangement } from '../../../../shared/engine/form';
import { SIZE_RANGES, type StudyChoice } from '../../../pulse/forecast/studySizes';

/** `speeds`: how many each size is followed at. */
export type Choice = StudyChoice & { readonly speeds?: number };

/** Each has those before it among its own, so that more speeds lose no answer. */
export const SPEED_COUNTS: readonly number[] = [6, 11, 21];

type Chosen = { readonly of: string | null; readonly choice: Choice };

export const useChoice = create<Chosen>()(() => ({ of: null, choice: {} }));

const NOTHING: Choice = {};

/** @param id of the design */
export const choiceOf = ({ of, choice }: Chosen, id: string): Choice => (of === id ? choice : NOTHING);
export const choiceNow = (id: string): Choice => choiceOf(useChoice.getState(), id);
export const isChosen = (id: string): boolean => useChoice.getState().of === id;

/** An empty list, or null, is as usual. */
export function setChoice<K extends keyof StudyChoice>(id: string, key: K, list: StudyChoice[K] | null): void {
  const { [key]: _, ...others } = choiceNow(id);
  useChoice.setState({ of: id, choice: list && list.length > 0 ? { ...others, [key]: list } : others });
}

export const setSpeeds = (id: string, speeds: number): void =>
  useChoice.setState({ of: id, choice: { ...choiceNow(id), speeds } });

export const adoptChoice = (id: string, choice: Choice): void => useChoice.setState({ of: id, choice });

/** What a kept study was asked for; whatever of it cannot be is as usual. */
export function readChoice(asked: unknown): Choice {
  if (asked === null || typeof asked !== 'object') return NOTHING;
  const given = asked as Record<string, unknown>;
  const numbers = (key: keyof typeof SIZE_RANGES): StudyChoice => {
    const [least, most] = SIZE_RANGES[key];
    const list = given[key];
    const isGood =
      Array.isArray(list) && list.length > 0 && list.every((mm) => typeof mm === 'number' && mm >= least && mm <= most);
    return isGood ? { [key]: list } : {};
  };
  const { arrangements } = given;
  const areKnown =
    Array.isArray(arrangements) && arrangements.length > 0 && arrangements.every((a) => ARRANGEMENTS.includes(a));
  return {
    ...{ ...numbers('lengths'), ...numbers('bores'), ...numbers('outlets') },
    ...(SPEED_COUNTS.includes(given.speeds as number) ? { speeds: given.speeds as number } : {}),
    ...(areKnown ? { arrangements: arrangements as Arrangement[] } : {}),
  };
}

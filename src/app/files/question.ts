/** What has to be decided before the design can be written to its file: shown in place until it is, or put aside. */
import { create } from 'zustand';
import type { DiskLink, Standing } from './fileOnDisk';

export type Question = {
  /** The design that it is about; opening another puts it aside. */
  readonly id: string;
  readonly link: DiskLink;
  readonly standing: Exclude<Standing, 'ready'>;
};

export const useQuestion = create<{ readonly question: Question | null }>()(() => ({ question: null }));

export const putAside = (): void => useQuestion.setState({ question: null });

/** What is wrong and what follows from it, in two sentences. */
export const QUESTION_WORDS: Readonly<Record<Question['standing'], (file: string) => readonly [string, string]>> = {
  changed: (file) => [
    `${file} has changed on disk.`,
    'Something else wrote to it after it was read here; overwriting loses that.',
  ],
  refused: (file) => [`${file} may not be written.`, 'The browser was not given leave to. Nothing was saved.'],
  gone: (file) => [`${file} is no longer there.`, 'It was moved, renamed or deleted. Nothing was saved.'],
};

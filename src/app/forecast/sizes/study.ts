/** The study of sizes: begun, followed by the crew, ended, gone on with. What it has found is kept in this browser beside its design. */
import { create } from 'zustand';
import type { Design } from '../../../../shared/design/types';
import type { EngineSetup } from '../../../pulse/engine/types';
import { engineHash } from '../../../pulse/forecast/hash';
import type { Team } from '../../../pulse/forecast/job';
import { STUDY_SPEEDS, speedsOf } from '../../../pulse/forecast/speeds';
import { beginStudy, type PathOf, STUDY_CELL, type StudyDocument, type StudyPlan } from '../../../pulse/forecast/study';
import { readStudy, writeStudy } from '../../../pulse/forecast/studyFile';
import { checkedKeys, ranked } from '../../../pulse/forecast/studyRank';
import { adoptChoice, type Choice, isChosen, readChoice } from './choice';

export type StudyState = {
  /** What is known; null: nothing yet. */
  readonly found: StudyDocument | null;
  readonly done: number;
  readonly all: number;
  readonly running: boolean;
  /** Best, middle and worst are followed again on fine cells. */
  readonly checking: boolean;
  /** Why it broke off, or is not kept. */
  readonly trouble: string | null;
};

export const NO_STUDY: StudyState = { found: null, done: 0, all: 0, running: false, checking: false, trouble: null };

export const useStudy = create<StudyState>()(() => NO_STUDY);

/** Where what was found is kept, of each engine (by its hash) apart; replaced in tests. */
export type Keeping = {
  read(id: string, engine: string): Promise<string | null>;
  write(id: string, engine: string, text: string): Promise<void>;
};

export type StudyWish = {
  /** The design's, on the shelf. */
  readonly id: string;
  readonly design: Design;
  readonly engine: EngineSetup;
  readonly sizes: StudyPlan['sizes'];
  readonly pathOf: PathOf;
  /** What sizes and speeds come from, to be shown again when the page is. */
  readonly choice?: Choice;
  /** How many; as usual where nobody said. */
  readonly speeds?: number;
};

/** Kept as often as this, speeds. */
const KEEP_EVERY = 12;

let turn = 0;
/** The study begun last, until it has written what it found: whoever reads that waits for it. */
let former: Promise<void> = Promise.resolve();
export const stopStudy = (): void => {
  turn += 1;
  useStudy.setState({ running: false, checking: false });
};

export const planOf = ({
  engine,
  sizes,
  speeds = STUDY_SPEEDS,
}: Pick<StudyWish, 'engine' | 'sizes' | 'speeds'>): StudyPlan => ({
  sizes,
  speeds: speedsOf(engine.speeds, speeds),
  band: engine.speeds,
  cell: STUDY_CELL,
});

/** What an earlier study has found for the same engine on the same cells. */
export async function formerStudy({ id, engine }: Pick<StudyWish, 'id' | 'engine'>, keeping: Keeping) {
  const text = await keeping.read(id, engineHash(engine)).catch(() => null);
  if (text === null) return null;
  try {
    const study = readStudy(text);
    return study.engine === engineHash(engine) && study.cell === STUDY_CELL ? study : null;
  } catch {
    // Of another version: begun anew.
    return null;
  }
}

/** Shows what was found before, without following anything. */
export async function recallStudy(wish: StudyWish, keeping: Keeping): Promise<void> {
  const own = ++turn;
  await former;
  const found = await formerStudy(wish, keeping);
  if (own !== turn) return;
  if (!isChosen(wish.id)) {
    const choice = readChoice(found && (found as { asked?: unknown }).asked);
    adoptChoice(wish.id, choice);
    // Asked for again at once, with these sizes.
    if (Object.keys(choice).length > 0) return;
  }
  if (!found) return useStudy.setState(NO_STUDY);
  const study = beginStudy(found.title, wish.engine, wish.pathOf, planOf(wish), found);
  useStudy.setState({ ...NO_STUDY, found: study.document(), done: study.done, all: study.all });
}

/** Goes on with what was found, else begins. One that was stopped just now writes first. */
export function runStudy(wish: StudyWish, team: Team, keeping: Keeping): Promise<void> {
  const own = ++turn;
  useStudy.setState({ running: true, checking: false, trouble: null });
  former = former.then(() => followStudy(wish, team, keeping, () => own !== turn));
  return former;
}

async function followStudy(wish: StudyWish, team: Team, keeping: Keeping, stopped: () => boolean): Promise<void> {
  if (stopped()) return;
  try {
    const found = await formerStudy(wish, keeping);
    if (stopped()) return;
    const study = beginStudy(wish.design.title ?? '', wish.engine, wish.pathOf, planOf(wish), found);
    const asked = (): StudyDocument & { asked: Choice } => ({ ...study.document(), asked: wish.choice ?? {} });
    const keep = () =>
      keeping.write(wish.id, engineHash(wish.engine), writeStudy(asked())).catch((error) => {
        if (!stopped()) useStudy.setState({ trouble: `What is found is not kept in this browser: ${String(error)}` });
      });
    let told = 0;
    const tell = () => {
      told += 1;
      if (told % KEEP_EVERY === 0) void keep();
      if (!stopped()) useStudy.setState({ found: study.document(), done: study.done, all: study.all });
    };
    useStudy.setState({ found: study.document(), done: study.done, all: study.all });
    await study.follow(team, tell, stopped);
    if (!stopped()) {
      useStudy.setState({ checking: true });
      await study.followFine(team, checkedKeys(ranked(study.document())), tell, stopped);
    }
    await keep();
    if (!stopped()) useStudy.setState({ found: study.document(), running: false, checking: false });
  } catch (error) {
    if (stopped()) return;
    const why = error instanceof Error ? error.message : String(error);
    useStudy.setState({ running: false, checking: false, trouble: why });
  }
}

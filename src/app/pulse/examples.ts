/** The rigs that come with the app. Fetched from beside it; nothing leaves this machine. */

export type RigExample = { readonly file: string; readonly title: string; readonly about: string };

const RIGS = './examples/rigs';

export async function listRigs(): Promise<RigExample[]> {
  const answer = await fetch(`${RIGS}/index.json`);
  if (!answer.ok) throw new Error(`The list of example rigs is missing (${answer.status}).`);
  return (await answer.json()) as RigExample[];
}

export async function fetchRig(file: string): Promise<string> {
  const answer = await fetch(`${RIGS}/${encodeURIComponent(file)}`);
  if (!answer.ok) throw new Error(`${file} is missing from the example rigs (${answer.status}).`);
  return answer.text();
}

/** A rig is a page of text; what is far larger was chosen by mistake. */
export const MOST_BYTES = 20_000_000;

/** @throws Error in words for the user */
export async function textOf(file: File): Promise<string> {
  if (file.size > MOST_BYTES)
    throw new Error(`${file.name} has ${file.size} bytes, at most ${MOST_BYTES} are read: choose a rig, a JSON file.`);
  return file.text();
}

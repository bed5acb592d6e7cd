/**
 * Text sealed with its number and a checksum, so that a record cut short or changed on its way tells: one head line
 * `evenrun-kept 1 NUMBER SHA256`, then the text. The checksum is over both.
 */
import { sha256 } from '../../formats/hash/sha256';

export type Sealed = {
  /** Counts the writings of one thing; the highest is the newest. */
  readonly number: number;
  readonly text: string;
};

const HEAD = /^evenrun-kept 1 (\d{1,15}) ([0-9a-f]{64})$/;

const checksum = (number: number, text: string) => sha256(new TextEncoder().encode(`${number}\n${text}`));

export async function seal({ number, text }: Sealed): Promise<string> {
  return `evenrun-kept 1 ${number} ${await checksum(number, text)}\n${text}`;
}

/** Null for whatever is not a whole sealed text. */
export async function unseal(value: unknown): Promise<Sealed | null> {
  if (typeof value !== 'string') return null;
  const end = value.indexOf('\n');
  const head = HEAD.exec(value.slice(0, Math.max(0, end)));
  if (!head) return null;
  const number = Number(head[1]);
  const text = value.slice(end + 1);
  return (await checksum(number, text)) === head[2] ? { number, text } : null;
}

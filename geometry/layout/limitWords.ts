/** The rules that stop a header, in a fabricator's words: what to widen, move or shorten. */
import type { Limit } from './balance';

/** One phrase for each rule at its limit, such as "the gap between runners r2 and r3". */
export const limitWords = (limits: readonly Limit[]): string[] => [...new Set(limits.map(phrase))];

/** Rules between two things; where it is not known what the other is, only the one is named. */
const BETWEEN: ReadonlySet<Limit['rule']> = new Set(['tube-to-tube', 'surroundings', 'merge-body']);

function phrase({ rule, where, other }: Limit): string {
  const [kind, id = '', part, number] = where.split('/');
  const subject = kind === 'merges' ? `collector ${id}` : `runner ${id}`;
  const against = nameOf(other);
  if (other === '' && BETWEEN.has(rule)) return `the room around ${subject}`;
  switch (rule) {
    case 'straight':
      return number === '0' ? `the first straight of ${subject}` : `straight ${Number(number) + 1} of ${subject}`;
    case 'angle':
      return `the angle of bend ${Number(number) + 1} of ${subject}`;
    case 'tube-to-tube':
      return `the gap between runners ${id} and ${other.split('/')[1]}`;
    case 'surroundings':
      return `the gap between ${subject} and ${against}`;
    case 'merge-body':
      return `the room between ${subject} and ${against}`;
    case 'self':
      return `the room between two legs of ${subject}`;
    case 'placement':
      return `the ${part === 'axis' ? 'tilt' : 'space'} allowed to ${subject}`;
    case 'balance':
      return `the length of group ${id}`;
    case 'bends':
      return `the bends of ${subject}: no more than the tooling allows, each in one plane`;
    case 'locked':
      return `${subject}, which is locked or has no bend to follow with`;
    case 'end':
      return `the end of ${subject}, which has one bend only to reach its inlet`;
    default:
      return `${rule} at ${where}`;
  }
}

function nameOf(path: string): string {
  const [kind, id = ''] = path.split('/');
  // A tool's room is made of parts, which nobody need tell apart.
  return kind === 'surroundings'
    ? `the ${id.replace(/^(room for .*) part \d+$/, '$1')}`
    : kind === 'merges'
      ? `collector ${id}`
      : `runner ${id}`;
}

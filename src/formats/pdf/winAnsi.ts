/**
 * Text as the standard PDF fonts can show it: they know the Western European set (code page 1252) alone. What it lacks is
 * written by the nearest sign it has, letters lose accents it cannot show, and the rest becomes a question mark.
 */

/** Beyond Latin-1, what the set has. */
const BEYOND = new Set('€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ');

const NEAREST: Readonly<Record<string, string>> = {
  '\u2212': '–',
  '\u2010': '-',
  '\u2011': '-',
  '\u2300': 'Ø',
  '\u2192': '>',
  '\u2190': '<',
  '\u2264': '<=',
  '\u2265': '>=',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u00a0': ' ',
  π: 'pi',
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ı: 'i',
};

export function winAnsi(text: string): string {
  return Array.from(text.normalize('NFC'), (c) => shown(c)).join('');
}

function shown(c: string): string {
  if (has(c)) return c;
  const nearest = NEAREST[c];
  if (nearest !== undefined) return nearest;
  const [plain] = c.normalize('NFD');
  return plain !== undefined && plain !== c && has(plain) ? plain : '?';
}

function has(c: string): boolean {
  const code = c.codePointAt(0)!;
  return (code >= 0x20 && code <= 0x7e) || (code > 0xa0 && code <= 0xff && code !== 0xad) || BEYOND.has(c);
}

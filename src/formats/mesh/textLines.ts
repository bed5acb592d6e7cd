/**
 * Walks text line by line and word by word on its bytes: a scan's text may be longer than a string can be, and making a string of
 * every number takes most of the time. Numbers of up to fifteen digits are exact here, the rest are left to the language.
 */

const [TAB, NEWLINE, RETURN, SPACE, BACKSLASH] = [9, 10, 13, 32, 92];
const [PLUS, MINUS, POINT, ZERO, NINE, UPPER_E, LOWER_E] = [43, 45, 46, 48, 57, 69, 101];
/** Ten to these powers is exact. */
const POWERS = Array.from({ length: 23 }, (_, i) => 10 ** i);
const DIGITS = 15;

export class TextLines {
  /** Counted from 1. */
  line = 0;
  private next: number;
  private start: number;
  private end: number;
  private at: number;

  constructor(
    private readonly bytes: Uint8Array,
    from = 0,
  ) {
    this.next = from;
    this.start = from;
    this.end = from;
    this.at = from;
  }

  /** Where in the bytes the next line begins. */
  get position(): number {
    return this.next;
  }

  /** Goes to the next line; false at the end. A line ends at \n, \r or both. */
  nextLine(): boolean {
    const { bytes } = this;
    if (this.next >= bytes.length) return false;
    this.at = this.next;
    this.start = this.next;
    let i = this.next;
    while (i < bytes.length && bytes[i] !== NEWLINE && bytes[i] !== RETURN) i++;
    this.end = i;
    this.next = i < bytes.length && bytes[i] === RETURN && bytes[i + 1] === NEWLINE ? i + 2 : i + 1;
    this.line++;
    return true;
  }

  /** Whether the line has another word. */
  hasWord(): boolean {
    const { bytes, end } = this;
    while (this.at < end && (bytes[this.at] === SPACE || bytes[this.at] === TAB)) this.at++;
    return this.at < end;
  }

  /** The next word in small letters; empty at the line's end. */
  word(): string {
    if (!this.hasWord()) return '';
    const start = this.at;
    this.skip();
    let word = '';
    for (let i = start; i < this.at; i++) word += String.fromCharCode(this.bytes[i]!);
    return word.toLowerCase();
  }

  /** The next word as a number; NaN where it is none or there is none. */
  number(): number {
    if (!this.hasWord()) return Number.NaN;
    const start = this.at;
    this.skip();
    return this.parse(start, this.at);
  }

  /** Whether the next word is the sign that the next line belongs to this one. */
  runsOn(): boolean {
    return this.hasWord() && this.bytes[this.at] === BACKSLASH && this.at + 1 === this.end;
  }

  /** The line, to be quoted. */
  whole(): string {
    const most = Math.min(this.end, this.start + 60);
    return new TextDecoder('latin1').decode(this.bytes.subarray(this.start, most)).trim();
  }

  /** The line after its first word. */
  afterWord = (): string => this.whole().replace(/^\S+\s*/, '');

  /** The leading whole number of the next word, such as the 7 of `7/2/3`; NaN where it does not begin with one. */
  index(): number {
    if (!this.hasWord()) return Number.NaN;
    const { bytes, end } = this;
    let i = this.at;
    const isMinus = bytes[i] === MINUS;
    if (isMinus) i++;
    const first = i;
    let value = 0;
    while (i < end && bytes[i]! >= ZERO && bytes[i]! <= NINE) value = 10 * value + bytes[i++]! - ZERO;
    const isWhole = i > first && i - first < DIGITS && (i === end || !isDigitLike(bytes[i]!));
    this.skip();
    return isWhole ? (isMinus ? -value : value) : Number.NaN;
  }

  private skip(): void {
    const { bytes, end } = this;
    while (this.at < end && bytes[this.at] !== SPACE && bytes[this.at] !== TAB) this.at++;
  }

  private parse(start: number, end: number): number {
    const { bytes } = this;
    let i = start;
    const isMinus = bytes[i] === MINUS;
    if (isMinus || bytes[i] === PLUS) i++;
    let value = 0;
    let digits = 0;
    let after = 0;
    let seenPoint = false;
    for (; i < end; i++) {
      const c = bytes[i]!;
      if (c >= ZERO && c <= NINE) {
        value = 10 * value + c - ZERO;
        digits++;
        if (seenPoint) after++;
      } else if (c === POINT && !seenPoint) seenPoint = true;
      else break;
    }
    if (digits === 0 || digits > DIGITS) return this.slowly(start, end);
    let power = -after;
    if (i < end) {
      if (bytes[i] !== UPPER_E && bytes[i] !== LOWER_E) return this.slowly(start, end);
      const exponent = this.parseExponent(i + 1, end);
      if (Number.isNaN(exponent)) return this.slowly(start, end);
      power += exponent;
    }
    if (power < -22 || power > 22) return this.slowly(start, end);
    const size = power < 0 ? value / POWERS[-power]! : value * POWERS[power]!;
    return isMinus ? -size : size;
  }

  private parseExponent(start: number, end: number): number {
    const { bytes } = this;
    let i = start;
    const isMinus = bytes[i] === MINUS;
    if (isMinus || bytes[i] === PLUS) i++;
    if (i >= end || end - i > 4) return Number.NaN;
    let value = 0;
    for (; i < end; i++) {
      const c = bytes[i]!;
      if (c < ZERO || c > NINE) return Number.NaN;
      value = 10 * value + c - ZERO;
    }
    return isMinus ? -value : value;
  }

  /** As the language reads it, so that what it refuses is refused. */
  private slowly(start: number, end: number): number {
    if (end - start > 100) return Number.NaN;
    return Number(new TextDecoder('latin1').decode(this.bytes.subarray(start, end)));
  }
}

const isDigitLike = (c: number): boolean => c === POINT || c === UPPER_E || c === LOWER_E;

/**
 * Lengths as people type them: `42.4`, `1 5/8`, `1 5/8 in`, `2*42.4+4`, `1' 6"`, `(1 + 5/8) in`. A bare number counts in the
 * display unit. Answers in mm. What could mean two things is refused with the two ways to say it, never guessed.
 *
 *   sum     = product (('+' | '-') product)*
 *   product = factor (('*' | '/') factor)*
 *   factor  = ('+' | '-') factor | measure
 *   measure = feet inches | (number | '(' sum ')') unit?
 *   number  = mixed ('1 5/8') | fraction ('5/8', so that '5/8 in' is what it says) | decimal ('42.4', '42,4', '.5')
 */
import type { Display } from './design/types';
import type { Mm } from './units';

export type LengthAnswer = { readonly ok: true; readonly mm: Mm } | { readonly ok: false; readonly problem: string };

export type NumberAnswer =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problem: string };

/** @param display the unit of bare numbers */
export function parseLength(text: string, display: Display): LengthAnswer {
  try {
    if (text.length > LONGEST) throw new Refused(`That is longer than ${LONGEST} characters.`);
    return { ok: true, mm: new Parser(plain(text), UNITS[display]!).answer() as Mm };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problem: error.message };
    throw error;
  }
}

/** The same signs for a number without a length: an angle, a count, a speed. `90/4`, `2*45+7 1/2`. */
export function parseNumber(text: string): NumberAnswer {
  try {
    if (text.length > LONGEST) throw new Refused(`That is longer than ${LONGEST} characters.`);
    const bare = plain(text).replace(/\s*(°|deg|degrees)$/, '');
    if (/[a-z"']/.test(bare)) throw new Refused('A plain number is wanted here: leave the unit out.');
    return { ok: true, value: new Parser(bare, 1).plainAnswer() };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problem: error.message };
    throw error;
  }
}

const LONGEST = 200;
/** mm; the document's own limit. */
const FARTHEST = 100_000;

const UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  ft: 304.8,
  foot: 304.8,
  feet: 304.8,
  "'": 304.8,
};

class Refused extends Error {}

/** A number of some unit yet to be known, or a length in mm. */
type Quantity = { readonly value: number; readonly isLength: boolean };

/** Keyboards' and word processors' variants of the same signs. */
const plain = (text: string): string =>
  text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${sign.normalize('NFKC').replace('⁄', '/')}`)
    .replace(/[”″“]/g, '"')
    .replace(/[’′‘]/g, "'")
    .replace(/''/g, '"')
    .replace(/[−–]/g, '-')
    .replace(/[×·]/g, '*')
    .replace(/÷/g, '/')
    .trim()
    .toLowerCase();

class Parser {
  private at = 0;

  constructor(
    private readonly text: string,
    private readonly bareUnit: number,
  ) {}

  answer(): number {
    if (this.text === '') throw new Refused('Type a length, such as 42.4 or 1 5/8 in.');
    const value = this.toLength(this.sum());
    if (this.at < this.text.length) this.lost();
    if (!(Math.abs(value) <= FARTHEST)) throw new Refused('That is more than a hundred metres.');
    return value;
  }

  plainAnswer(): number {
    if (this.text === '') throw new Refused('Type a number, such as 12 or 90/4.');
    const { value } = this.sum();
    if (this.at < this.text.length) this.lost();
    if (!Number.isFinite(value)) throw new Refused('That is too large to hold.');
    return value;
  }

  private sum(): Quantity {
    let left = this.product();
    for (let sign = this.take(/[+-]/y); sign !== null; sign = this.take(/[+-]/y)) {
      const right = this.product();
      const step = sign === '+' ? 1 : -1;
      // Bare numbers stay bare, so that (1 + 5/8) in works; beside a length they are lengths of the display unit.
      left =
        left.isLength || right.isLength
          ? { value: this.toLength(left) + step * this.toLength(right), isLength: true }
          : { value: left.value + step * right.value, isLength: false };
    }
    return left;
  }

  private product(): Quantity {
    let left = this.factor();
    for (let sign = this.take(/[*/]/y); sign !== null; sign = this.take(/[*/]/y)) {
      left = sign === '*' ? times(left, this.factor()) : over(left, this.factor());
    }
    return left;
  }

  private factor(): Quantity {
    const sign = this.take(/[+-]/y);
    if (sign === null) return this.measure();
    const { value, isLength } = this.factor();
    return { value: sign === '-' ? -value : value, isLength };
  }

  private measure(): Quantity {
    const { quantity, factor } = this.withUnit();
    if (factor !== UNITS.ft) return quantity;
    const before = this.at;
    if (this.peek(/[\d.]/y)) {
      const rest = this.withUnit();
      if (rest.factor === UNITS.in) return { value: quantity.value + rest.quantity.value, isLength: true };
      this.at = before;
    }
    return quantity;
  }

  private withUnit(): { quantity: Quantity; factor: number | null } {
    const inner = this.take(/\(/y) === null ? { value: this.number(), isLength: false } : this.bracketed();
    const name = this.take(/[a-zµ]+|["']/y);
    if (name === null) return { quantity: inner, factor: null };
    if (!Object.hasOwn(UNITS, name))
      throw new Refused(`"${name}" is not a unit known here: use mm, cm, m, in, " or ft.`);
    if (inner.isLength) throw new Refused(`The part before "${name}" has a unit already.`);
    const factor = UNITS[name]!;
    return { quantity: { value: inner.value * factor, isLength: true }, factor };
  }

  private bracketed(): Quantity {
    const inner = this.sum();
    if (this.take(/\)/y) === null) throw new Refused('A closing bracket ")" is missing.');
    return inner;
  }

  private number(): number {
    const hyphened = this.take(/\d+-\d+\/\d+(?![\d.,])/y);
    if (hyphened !== null) {
      const [whole, rest] = hyphened.split('-');
      throw new Refused(`"${hyphened}" can mean two things: write "${whole} ${rest}" or "${whole} - ${rest}".`);
    }
    const mixed = this.take(/\d+\s+\d+\s*\/\s*\d+(?![\d.,])/y);
    if (mixed !== null) {
      const [whole, fraction] = mixed.split(/\s+(.*)/s) as [string, string];
      return Number(whole) + divide(fraction);
    }
    const fraction = this.take(/\d+\s*\/\s*\d+(?![\d.,])/y);
    if (fraction !== null) return divide(fraction);
    const decimal = this.take(/\d+(?:[.,]\d+)?\.?|[.,]\d+/y);
    if (decimal === null) return this.lost();
    if (/^\d{1,3},\d{3}$/.test(decimal)) {
      const [thousands, rest] = decimal.split(',');
      throw new Refused(`"${decimal}" can mean two things: write ${thousands}.${rest} or ${thousands}${rest}.`);
    }
    return Number(decimal.replace(',', '.'));
  }

  private toLength({ value, isLength }: Quantity): number {
    return isLength ? value : value * this.bareUnit;
  }

  private take(pattern: RegExp): string | null {
    while (this.text[this.at] === ' ' || this.text[this.at] === '\t') this.at++;
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0] ?? null;
    if (found !== null) this.at += found.length;
    return found;
  }

  private peek(pattern: RegExp): boolean {
    const before = this.at;
    const found = this.take(pattern) !== null;
    this.at = before;
    return found;
  }

  private lost(): never {
    if (this.at >= this.text.length) throw new Refused(`A number is missing at the end of "${this.text}".`);
    throw new Refused(
      `"${this.text.slice(this.at)}" is not understood here: numbers, + - * / ( ), mm, cm, m, in, ft are.`,
    );
  }
}

function times(a: Quantity, b: Quantity): Quantity {
  if (a.isLength && b.isLength) throw new Refused('A length times a length is an area: leave one unit out.');
  return { value: a.value * b.value, isLength: a.isLength || b.isLength };
}

function over(a: Quantity, b: Quantity): Quantity {
  if (b.value === 0) throw new Refused('That divides by zero.');
  if (b.isLength && !a.isLength) throw new Refused('A number divided by a length is no length: leave its unit out.');
  return { value: a.value / b.value, isLength: a.isLength && !b.isLength };
}

function divide(fraction: string): number {
  const [top, bottom] = fraction.split('/').map(Number) as [number, number];
  if (bottom === 0) throw new Refused('That divides by zero.');
  return top / bottom;
}

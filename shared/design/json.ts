/**
 * A strict JSON reader (RFC 8259). Our own, for what the platform's does not do: it names line and column in the same
 * words everywhere, refuses a key given twice (which would lose the first silently), and stops at a depth and at numbers
 * too large to hold.
 */
import { pathOf } from './ids';
import { MAX_DEPTH } from './limits';
import { DesignError, describe } from './refusal';

/** @throws DesignError naming line and column, or the path where the syntax is good and the value is not */
export function readJson(text: string): unknown {
  const reader = new Reader(text);
  const value = reader.value([]);
  reader.end();
  return value;
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORDS: readonly (readonly [string, unknown])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
];

class Reader {
  private at: number;

  constructor(private readonly text: string) {
    // A byte order mark is how some editors save UTF-8.
    this.at = text.startsWith('\ufeff') ? 1 : 0;
  }

  value(path: (string | number)[]): unknown {
    this.space();
    const c = this.text[this.at];
    if (c === '{' || c === '[') {
      if (path.length >= MAX_DEPTH) {
        throw new DesignError([
          { path: pathOf(null, path), found: 'a deeper level', allowed: `at most ${MAX_DEPTH} levels` },
        ]);
      }
      return c === '{' ? this.object(path) : this.list(path);
    }
    if (c === '"') return this.string();
    for (const [word, value] of WORDS) {
      if (this.text.startsWith(word, this.at)) {
        this.at += word.length;
        return value;
      }
    }
    return this.number(path);
  }

  end(): void {
    this.space();
    if (this.at < this.text.length) this.refuse('nothing after the end of the document');
  }

  private object(path: (string | number)[]): unknown {
    const object: Record<string, unknown> = {};
    this.at++;
    if (this.next('}')) return object;
    do {
      this.space();
      if (this.text[this.at] !== '"') this.refuse('a name in double quotes');
      const key = this.string();
      path.push(key);
      if (key === '__proto__') this.refuseKey(path, describe(key), 'any other name');
      if (Object.hasOwn(object, key)) this.refuseKey(path, `${describe(key)} twice`, 'each name once');
      if (!this.next(':')) this.refuse('":"');
      object[key] = this.value(path);
      path.pop();
    } while (this.next(','));
    if (!this.next('}')) this.refuse('"," or "}"');
    return object;
  }

  private list(path: (string | number)[]): unknown {
    const list: unknown[] = [];
    this.at++;
    if (this.next(']')) return list;
    do {
      path.push(list.length);
      list.push(this.value(path));
      path.pop();
    } while (this.next(','));
    if (!this.next(']')) this.refuse('"," or "]"');
    return list;
  }

  private string(): string {
    const start = this.at;
    for (let i = start + 1; i < this.text.length; i++) {
      const c = this.text.charCodeAt(i);
      if (c === 0x5c) {
        const known = /["\\/bfnrt]|u[0-9a-fA-F]{4}/y;
        known.lastIndex = i + 1;
        if (!known.test(this.text)) this.refuse('an escape that JSON knows, such as \\n or \\u00e9', i);
        i = known.lastIndex - 1;
      } else if (c === 0x22) {
        this.at = i + 1;
        return JSON.parse(this.text.slice(start, this.at)) as string;
      } else if (c < 0x20) this.refuse('no control character within quotes', i);
    }
    return this.refuse('a closing double quote', this.text.length);
  }

  private number(path: (string | number)[]): number {
    NUMBER.lastIndex = this.at;
    const digits = NUMBER.exec(this.text)?.[0];
    if (digits === undefined) return this.refuse('a number, text in double quotes, true, false, null, [ or {');
    this.at = NUMBER.lastIndex;
    const value = Number(digits);
    if (Number.isFinite(value)) return value;
    throw new DesignError([{ path: pathOf(null, path), found: describe(digits), allowed: 'a finite number' }]);
  }

  private space(): void {
    while (' \t\r\n'.includes(this.text[this.at] ?? 'end')) this.at++;
  }

  private next(sign: string): boolean {
    this.space();
    if (this.text[this.at] !== sign) return false;
    this.at++;
    return true;
  }

  private refuseKey(path: (string | number)[], found: string, allowed: string): never {
    throw new DesignError([{ path: pathOf(null, path), found, allowed: `${allowed} (${this.place(this.at)})` }]);
  }

  private refuse(allowed: string, at = this.at): never {
    const found =
      at >= this.text.length
        ? 'the end of the file'
        : describe(/^[\w.+-]{1,20}/.exec(this.text.slice(at, at + 20))?.[0] ?? this.text[at]);
    throw new DesignError([{ path: this.place(at), found, allowed }]);
  }

  private place(at: number): string {
    const before = this.text.slice(0, at);
    const lineStart = before.lastIndexOf('\n') + 1;
    return `line ${before.split('\n').length}, column ${at - lineStart + 1}`;
  }
}

import type { LineCounter, Node, Scalar } from 'yaml';
import { InputError, printable } from '../base/index.js';
import { loadYaml } from './load-yaml.js';
import { nearest } from './nearest.js';

const LONGEST_LIST = 1000;
const LONGEST_TEXT = 400;

/** One value of the page with its place; every reading either gives what is asked for or says what is wrong. */
export class BriefNode {
  readonly #node: Node | null;
  readonly #name: string;
  readonly #lines: LineCounter;
  readonly #start: number;

  /**
   * @param node the value, null when nothing stands there
   * @param name what the value is called, e.g. `tempo.lowest`
   * @param lines finds the line of a place
   * @param start place of the value, or of its name when nothing stands there
   */
  constructor(node: Node | null, name: string, lines: LineCounter, start: number) {
    this.#node = node;
    this.#name = name;
    this.#lines = lines;
    this.#start = start;
    if (loadYaml().isAlias(node)) this.fail('is a reference to another place', 'write the value itself');
  }

  /** Nothing stands there, so the default holds. */
  get empty(): boolean {
    return this.#node === null || (loadYaml().isScalar(this.#node) && this.#node.value === null);
  }

  /**
   * @param found what stands there
   * @param needed what is allowed
   */
  fail(found: string, needed: string): never {
    const { line } = this.#lines.linePos(this.#start);
    const where = this.#name === '' ? 'the page' : this.#name;
    throw new InputError('bad-brief', `line ${line}: ${where} ${found}; ${needed}`);
  }

  /**
   * @param allowed names of the fields
   * @returns the fields that stand there and are not empty
   */
  fields<K extends string>(allowed: readonly K[]): Partial<Record<K, BriefNode>> {
    if (this.empty) return {};
    if (!loadYaml().isMap(this.#node))
      return this.fail(`is ${this.#shown()}`, `fields are needed: ${allowed.join(', ')}`);
    const found: Partial<Record<K, BriefNode>> = {};
    for (const { key, value } of this.#node.items) {
      const name = loadYaml().isScalar(key) ? String(key.value) : '';
      const at = (key as Node).range?.[0] ?? this.#start;
      const path = this.#name === '' ? name : `${this.#name}.${name}`;
      const known = allowed.find((one) => one === name);
      if (known === undefined) this.#unknown(name, allowed, at);
      const start = (value as Node | null)?.range?.[0] ?? at;
      const node = new BriefNode(value as Node | null, path, this.#lines, start);
      if (!node.empty) found[known as K] = node;
    }
    return found;
  }

  /** @returns the values of a list */
  list(): BriefNode[] {
    if (!loadYaml().isSeq(this.#node))
      return this.fail(`is ${this.#shown()}`, 'a list is needed, each line with a dash');
    if (this.#node.items.length > LONGEST_LIST) this.fail('is too long', `at most ${LONGEST_LIST} entries are read`);
    return this.#node.items.map((item, i) => {
      const node = item as Node | null;
      return new BriefNode(node, `${this.#name}[${i + 1}]`, this.#lines, node?.range?.[0] ?? this.#start);
    });
  }

  /**
   * @param lowest smallest number allowed
   * @param highest largest number allowed
   * @param otherwise what else is allowed there, for the message
   * @returns the number
   */
  number(lowest: number, highest: number, otherwise = ''): number {
    const value = loadYaml().isScalar(this.#node) ? this.#node.value : null;
    if (typeof value === 'number' && value >= lowest && value <= highest) return value;
    return this.fail(`is ${this.#shown()}`, `a number from ${lowest} to ${highest}${otherwise} is needed`);
  }

  /** @returns true when this word stands there */
  is(word: string): boolean {
    return loadYaml().isScalar(this.#node) && this.#node.value === word;
  }

  /** @returns the text; a number counts as the text it is written with */
  text(): string {
    const value = loadYaml().isScalar(this.#node) ? this.#node.value : null;
    if (typeof value !== 'string' && typeof value !== 'number')
      return this.fail(`is ${this.#shown()}`, 'a text is needed');
    // bar 007 is not bar 7
    const written = typeof value === 'number' ? (this.#node as Scalar).source : value;
    const text = printable(String(written ?? value))
      .replace(/\s+/g, ' ')
      .trim();
    if (text.length > LONGEST_TEXT) this.fail('is too long', `at most ${LONGEST_TEXT} letters are read`);
    return text;
  }

  /**
   * @param words what is allowed
   * @returns the one that stands there
   */
  oneOf<W extends string>(words: readonly W[]): W {
    const value = loadYaml().isScalar(this.#node) ? String(this.#node.value) : '';
    const found = words.find((word) => word === value);
    if (found !== undefined) return found;
    const near = nearest(value, words);
    const meant = near === null ? '' : ` (did you mean ${near}?)`;
    return this.fail(`is ${this.#shown()}${meant}`, `one of these is needed: ${words.join(', ')}`);
  }

  #unknown(name: string, allowed: readonly string[], at: number): never {
    const near = nearest(name, allowed);
    const { line } = this.#lines.linePos(at);
    const where = this.#name === '' ? 'this page' : this.#name;
    const meant = near === null ? '' : ` (did you mean ${near}?)`;
    throw new InputError(
      'bad-brief',
      `line ${line}: there is no field "${name.slice(0, 40)}" in ${where}${meant}; the fields are: ${allowed.join(', ')}`,
    );
  }

  #shown(): string {
    if (this.empty) return 'empty';
    if (loadYaml().isMap(this.#node)) return 'a group of fields';
    if (loadYaml().isSeq(this.#node)) return 'a list';
    return loadYaml().isScalar(this.#node)
      ? `"${String(this.#node.value).replace(/\s+/g, ' ').slice(0, 40)}"`
      : 'nothing known';
  }
}

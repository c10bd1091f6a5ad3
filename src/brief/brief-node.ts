import type { LineCounter, Node, Scalar } from 'yaml';
import { type FaultArguments, type FaultCode, type FaultFacts, InputError, printable } from '../base/index.js';
import { loadYaml } from './load-yaml.js';
import { nearest } from './nearest.js';

const LONGEST_LIST = 1000;
const LONGEST_TEXT = 400;

/** Where a value stands; it is filled in by the value. */
type Place = 'line' | 'field';
/** Faults of one value of a brief. */
type ValueFault = { [C in FaultCode]: Place extends keyof FaultFacts<C> ? C : never }[FaultCode];
/** What is told of such a fault beside its place. */
type Beside<C extends ValueFault> = Omit<FaultFacts<C>, Place>;

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
    if (loadYaml().isAlias(node)) this.fail('brief-reference', {});
  }

  /** Nothing stands there, so the default holds. */
  get empty(): boolean {
    return this.#node === null || (loadYaml().isScalar(this.#node) && this.#node.value === null);
  }

  /**
   * @param code what is wrong with the value
   * @param facts what stands there and what is allowed
   * @throws InputError always, with the place of the value
   */
  fail<C extends ValueFault>(code: C, facts: Beside<C>): never {
    throw this.#fault(code, facts, this.#start);
  }

  /**
   * @param allowed names of the fields
   * @returns the fields that stand there and are not empty
   */
  fields<K extends string>(allowed: readonly K[]): Partial<Record<K, BriefNode>> {
    if (this.empty) return {};
    if (!loadYaml().isMap(this.#node)) return this.fail('brief-no-fields', { ...this.#found(), allowed });
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
    if (!loadYaml().isSeq(this.#node)) return this.fail('brief-no-list', this.#found());
    if (this.#node.items.length > LONGEST_LIST) this.fail('brief-long-list', { most: LONGEST_LIST });
    return this.#node.items.map((item, i) => {
      const node = item as Node | null;
      return new BriefNode(node, `${this.#name}[${i + 1}]`, this.#lines, node?.range?.[0] ?? this.#start);
    });
  }

  /**
   * @param lowest smallest number allowed
   * @param highest largest number allowed
   * @param orOff whether the word off is allowed there, too
   * @returns the number
   */
  number(lowest: number, highest: number, orOff = false): number {
    const value = loadYaml().isScalar(this.#node) ? this.#node.value : null;
    if (typeof value === 'number' && value >= lowest && value <= highest) return value;
    return this.fail('brief-no-number', { ...this.#found(), lowest, highest, orOff });
  }

  /** @returns true when this word stands there */
  is(word: string): boolean {
    return loadYaml().isScalar(this.#node) && this.#node.value === word;
  }

  /** @returns the text; a number counts as the text it is written with */
  text(): string {
    const value = loadYaml().isScalar(this.#node) ? this.#node.value : null;
    if (typeof value !== 'string' && typeof value !== 'number') return this.fail('brief-no-text', this.#found());
    // bar 007 is not bar 7
    const written = typeof value === 'number' ? (this.#node as Scalar).source : value;
    const text = printable(String(written ?? value))
      .replace(/\s+/g, ' ')
      .trim();
    if (text.length > LONGEST_TEXT) this.fail('brief-long-text', { most: LONGEST_TEXT });
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
    const meant = nearest(value, words) ?? '';
    return this.fail('brief-other-word', { ...this.#found(), meant, allowed: words });
  }

  #unknown(name: string, allowed: readonly string[], at: number): never {
    const meant = nearest(name, allowed) ?? '';
    throw this.#fault('brief-no-such-field', { name: name.slice(0, 40), meant, allowed }, at);
  }

  #fault<C extends ValueFault>(code: C, facts: Beside<C>, at: number): InputError {
    const { line } = this.#lines.linePos(at);
    return new InputError(...([code, { ...facts, line, field: this.#name }] as unknown as FaultArguments));
  }

  #found(): Pick<FaultFacts<'brief-no-text'>, 'found' | 'quoted'> {
    if (this.empty) return { found: 'empty', quoted: '' };
    if (loadYaml().isMap(this.#node)) return { found: 'fields', quoted: '' };
    if (loadYaml().isSeq(this.#node)) return { found: 'list', quoted: '' };
    if (!loadYaml().isScalar(this.#node)) return { found: 'unknown', quoted: '' };
    return { found: 'text', quoted: String(this.#node.value).replace(/\s+/g, ' ').slice(0, 40) };
  }
}

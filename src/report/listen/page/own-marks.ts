import type { OwnMark } from './marks-table.js';

/** Marks and words as they are kept: marks by criterion and take, words by take. */
interface Kept {
  judge: string;
  marks: Record<string, Record<string, number>>;
  words: Record<string, string>;
}

/** One's own marks, kept in the browser where it lets a page keep something, and in memory where it does not. */
export class OwnMarks {
  readonly #key: string;
  #kept: Kept;
  /** whether the browser keeps what is written */
  isKept = true;

  /** @param room under whose name the marks are kept */
  constructor(room: string) {
    this.#key = `takesheet listening room ${room}`;
    this.#kept = this.#read();
  }

  get judge(): string {
    return this.#kept.judge;
  }

  set judge(name: string) {
    this.#kept.judge = name;
    this.#write();
  }

  /** @returns the mark of a take by a criterion; null when there is none */
  markOf(take: string, criterion: string): number | null {
    return this.#kept.marks[criterion]?.[take] ?? null;
  }

  /** @param mark null takes it away */
  setMark(take: string, criterion: string, mark: number | null): void {
    const marks = { ...this.#kept.marks[criterion] };
    if (mark === null) delete marks[take];
    else marks[take] = mark;
    this.#kept.marks[criterion] = marks;
    this.#write();
  }

  /** @returns the word on a take, empty when there is none */
  wordOf(take: string): string {
    return this.#kept.words[take] ?? '';
  }

  /** @param word empty takes it away */
  setWord(take: string, word: string): void {
    const { [take]: _, ...others } = this.#kept.words;
    this.#kept.words = word === '' ? others : { ...others, [take]: word };
    this.#write();
  }

  /**
   * @param takes names in the order of the table
   * @returns all marks, and how many words stand without one
   */
  all(takes: readonly string[]): { readonly marks: readonly OwnMark[]; readonly alone: number } {
    const marks = takes.flatMap((take) =>
      Object.entries(this.#kept.marks).flatMap(([criterion, of]): OwnMark[] => {
        const points = of[take];
        return points === undefined ? [] : [{ take, criterion, points, word: this.wordOf(take) }];
      }),
    );
    const marked = new Set(marks.map(({ take }) => take));
    return { marks, alone: takes.filter((take) => this.wordOf(take) !== '' && !marked.has(take)).length };
  }

  /** Forgets everything, here and in the browser. */
  forget(): void {
    this.#kept = { judge: '', marks: {}, words: {} };
    try {
      localStorage.removeItem(this.#key);
    } catch {
      this.isKept = false;
    }
  }

  #read(): Kept {
    const nothing: Kept = { judge: '', marks: {}, words: {} };
    try {
      const text = localStorage.getItem(this.#key);
      return text === null ? nothing : { ...nothing, ...(JSON.parse(text) as Partial<Kept>) };
    } catch {
      this.isKept = false;
      return nothing;
    }
  }

  #write(): void {
    try {
      localStorage.setItem(this.#key, JSON.stringify(this.#kept));
    } catch {
      this.isKept = false;
    }
  }
}

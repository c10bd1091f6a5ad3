import { printable } from '../base/index.js';

/** What a bar is drawn on. */
export interface Terminal {
  readonly columns?: number | undefined;
  write(text: string): unknown;
}

const WIDEST = 40;
const NARROWEST = 8;
/** At the end of the line: a terminal wraps when its last column is full, and shows a Ctrl-C as two letters. */
const LEFT_FREE = 4;
const DEFAULT_COLUMNS = 80;
/** Back to the beginning of the line, and everything on it away. Source: ECMA-48, CR and EL. */
const CLEAN = '\r\u001b[2K';

/**
 * A bar on one line of a terminal. The line is always shorter than the terminal is wide, so that it never wraps; messages are
 * written whole above it, however long they are.
 */
export class TerminalBar {
  readonly #terminal: Terminal;
  #line: (width: number) => string = () => '';

  /** @param terminal where to draw */
  constructor(terminal: Terminal) {
    this.#terminal = terminal;
  }

  /**
   * @param share done, 0 to 1
   * @param words what stands after the bar
   */
  show(share: number, words: string): void {
    this.#line = (columns) => {
      const width = Math.max(NARROWEST, Math.min(WIDEST, columns - words.length - 1 - LEFT_FREE));
      const full = Math.round(share * width);
      return `${'█'.repeat(full)}${'░'.repeat(width - full)} ${words}`.slice(0, columns - LEFT_FREE);
    };
    this.#draw();
  }

  /** @param message a line of its own, without a line break */
  say(message: string): void {
    this.#terminal.write(`${CLEAN}${printable(message)}\n`);
    this.#draw();
  }

  /** Takes the bar away. */
  end(): void {
    this.#terminal.write(CLEAN);
    this.#line = () => '';
  }

  #draw(): void {
    const { columns } = this.#terminal;
    this.#terminal.write(`${CLEAN}${this.#line(columns === undefined || columns < 1 ? DEFAULT_COLUMNS : columns)}`);
  }
}

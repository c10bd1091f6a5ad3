import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import type { TakeEnd } from '../../src/batch/index.js';
import { progressTo } from '../../src/cli/progress-bar.js';
import { resultLine } from '../../src/cli/result-line.js';
import { TerminalBar } from '../../src/cli/terminal-bar.js';
import { remarksInWords, WORDS } from '../../src/cli/words.js';
import type { SectionRow } from '../../src/result/index.js';

const failed: TakeEnd = {
  name: 'song.mp3',
  who: { player: null, date: null, instrument: null },
  failure: { file: 'week 1/song.mp3', code: 'not-a-wav', fault: { code: 'other-audio', facts: { ending: '.mp3' } } },
};

function reviewed(name: string, toFix = 0, toWatch = 0, kept = false): TakeEnd {
  const row = { take: { outcome: 'reviewed' }, toFix, toWatch } as SectionRow;
  return { name, report: `takes/${name}.pdf`, row, kept };
}

describe('the line of a take on standard output', () => {
  it('holds name, outcome, things to fix, things to watch and report', () => {
    expect(resultLine(reviewed('ada', 2, 3))).toBe('ada\treviewed\t2\t3\ttakes/ada.pdf');
  });

  it('has as many columns when the take failed', () => {
    expect(resultLine(failed)).toBe('song.mp3\tfailed\t\t\t');
  });
});

describe('progress where nobody watches', () => {
  it('is a plain line a take', () => {
    let text = '';
    const { tell, end } = progressTo({ write: (more) => (text += more) });
    tell({ done: 1, total: 3, end: reviewed('ada') });
    tell({ done: 2, total: 3, end: failed });
    tell({ done: 3, total: 3, end: reviewed('ben', 0, 0, true) });
    end();
    expect(text).toBe(
      '1/3 ada: reviewed\n2/3 week 1/song.mp3: this is .mp3 audio, and only WAV is read; save it as WAV\n3/3 ben: reviewed, as before\n',
    );
  });
});

describe('progress on a terminal', () => {
  class Terminal extends Writable {
    readonly isTTY = true;
    readonly columns = 80;
    text = '';
    override _write(chunk: Buffer, _encoding: string, done: () => void): void {
      this.text += chunk.toString();
      done();
    }
  }

  // ECMA-48: control sequences begin with ESC [ ; what is left of the text without them is what stands on the screen.
  const shown = (text: string): string =>
    text
      .split('\u001b[')
      .map((piece, i) => (i === 0 ? piece : piece.replace(/^[0-9;?]*[A-Za-z]/, '')))
      .join('');

  /** What a terminal of so many columns shows in the end: long lines wrap, CR and EL act on the line the cursor is in. */
  function screen(text: string, columns: number): string[] {
    const rows: string[] = [''];
    let at = 0;
    const put = (letter: string): void => {
      if (at === columns) {
        rows.push('');
        at = 0;
      }
      const row = rows.at(-1) as string;
      rows[rows.length - 1] = row.slice(0, at).padEnd(at) + letter + row.slice(at + 1);
      at += 1;
    };
    for (const piece of text.split('\u001b[2K').flatMap((part, i) => (i === 0 ? [part] : ['\u001b', part]))) {
      if (piece === '\u001b') rows[rows.length - 1] = '';
      else
        for (const letter of piece) {
          if (letter === '\r') at = 0;
          else if (letter === '\n') {
            rows.push('');
            at = 0;
          } else put(letter);
        }
    }
    return rows;
  }

  // Expected: what was said stands whole, line after line as wide as the terminal, and the bar is gone.
  it.each([40, 60, 72, 80])('with %i columns keeps every message whole, and leaves nothing behind', (columns) => {
    let text = '';
    const bar = new TerminalBar({ columns, write: (more) => (text += more) });
    bar.show(0.2, '1/5  about 40 s left');
    bar.say(`1/5 ${'a long name '.repeat(12)}end`);
    bar.show(0.4, '2/5  about 30 s left');
    text += '^C';
    bar.say('stopping; what is finished stays');
    bar.show(0.6, `3/5  ${'x'.repeat(90)}`);
    bar.end();
    text += 'stopped\n';
    const said = screen(text, columns).join('');
    expect(said).toBe(`1/5 ${'a long name '.repeat(12)}endstopping; what is finished staysstopped`);
  });

  it('never draws a bar as wide as the terminal', () => {
    const drawn: string[] = [];
    const bar = new TerminalBar({ columns: 60, write: (more) => drawn.push(more) });
    bar.show(1, '500/500  about 12 min left');
    expect(drawn.every((line) => line.replace('\r\u001b[2K', '').length < 60)).toBe(true);
  });

  it('tells no time from what failed at once', () => {
    const terminal = new Terminal();
    const { tell } = progressTo(terminal);
    for (const done of [1, 2, 3]) tell({ done, total: 60, end: failed });
    expect(terminal.text).not.toContain('left');
    tell({ done: 4, total: 60, end: reviewed('ada') });
    expect(terminal.text).toContain('left');
  });

  it('is a bar with counts, whose failures stay', () => {
    const terminal = new Terminal();
    const { tell, end } = progressTo(terminal);
    tell({ done: 1, total: 3, end: reviewed('ada') });
    tell({ done: 2, total: 3, end: failed });
    end();
    expect(shown(terminal.text)).toMatch(/2\/3/);
    expect(shown(terminal.text)).toContain(
      '2/3 week 1/song.mp3: this is .mp3 audio, and only WAV is read; save it as WAV\n',
    );
    expect(terminal.text).not.toContain('ada');
  });
});

describe('the time left', () => {
  it.each([
    [0.2, 'about 1 s left'],
    [40, 'about 40 s left'],
    [600, 'about 10 min left'],
    [7200, 'about 2 h left'],
    [Number.NaN, ''],
  ])('%d s: %s', (seconds, words) => {
    expect(WORDS.timeLeft(seconds)).toBe(words);
  });
});

describe('what there is to know beside the results', () => {
  const nothing = { leftAlone: [], rosterLinesUnused: [] };

  it('is silent when there is nothing', () => {
    expect(remarksInWords(nothing)).toEqual([]);
  });

  it('names takes of different players that are one recording', () => {
    expect(remarksInWords({ ...nothing, same: [['ada', 'ben', 'cy']] })).toEqual([
      'the same recording, byte by byte, for different players: ada, ben, cy; ask who played it',
    ]);
  });

  it('names lines and files, some of many', () => {
    const files = Array.from({ length: 9 }, (_, i) => `takes/old${i}.json`);
    const said = remarksInWords({ leftAlone: files, rosterLinesUnused: [4] });
    expect(said).toEqual([
      'the roster names takes that were not given: line 4',
      expect.stringMatching(/not counted.*: takes\/old0\.json, .* and 4 more$/),
    ]);
  });
});

// ECMA-48 (escape sequences), UAX 9 (changes of direction): neither names nor sentences bring them to a terminal.
describe('a name that would forge lines', () => {
  const name = 'ada\n2/2 ben: reviewed\u001b[2K\u202e';
  const failure = { file: name, code: 'no-such-file', fault: { code: 'file-missing', facts: {} } } as const;
  const end: TakeEnd = { name, failure, who: { player: null, date: null, instrument: null } };

  it('stays on its line, on a terminal, in a pipe and in the table', () => {
    for (const isTTY of [true, false]) {
      let said = '';
      const progress = progressTo({ isTTY, write: (text) => (said += text) });
      progress.tell({ done: 1, total: 1, end });
      const lines = said.split('\n').filter((line) => line.includes('ada'));
      expect(lines).toHaveLength(1);
      expect(lines[0]).toContain('ada 2/2 ben: reviewed\ufffd[2K\ufffd');
    }
    expect(resultLine(end)).toBe('ada 2/2 ben: reviewed\ufffd[2K\ufffd\tfailed\t\t\t');
  });
});

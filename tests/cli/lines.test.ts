import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import type { TakeEnd } from '../../src/batch/index.js';
import { progressTo } from '../../src/cli/progress-bar.js';
import { resultLine } from '../../src/cli/result-line.js';
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

  it('is a bar with counts, whose failures stay', async () => {
    const terminal = new Terminal();
    const { tell, end } = progressTo(terminal);
    tell({ done: 1, total: 3, end: reviewed('ada') });
    tell({ done: 2, total: 3, end: failed });
    await new Promise((resolve) => setTimeout(resolve, 250));
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

  it('names lines and files, some of many', () => {
    const files = Array.from({ length: 9 }, (_, i) => `old${i}.json`);
    const said = remarksInWords({ leftAlone: files, rosterLinesUnused: [4] });
    expect(said).toEqual([
      'the roster names takes that were not given: line 4',
      expect.stringMatching(/not counted.*: takes\/old0\.json, .* and 4 more$/),
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import type { TakeEnd } from '../../src/batch/index.js';
import { progressTo } from '../../src/cli/progress.js';
import { resultLine } from '../../src/cli/result-line.js';

const failed: TakeEnd = {
  name: 'song.mp3',
  failure: { file: 'week 1/song.mp3', code: 'not-a-wav', message: 'only WAV is read; save it as WAV' },
};

function reviewed(name: string, weights: readonly string[]): TakeEnd {
  const findings = weights.map((weight) => ({ weight }));
  return { name, report: `takes/${name}.pdf`, result: { outcome: 'reviewed', findings } } as unknown as TakeEnd;
}

describe('the line of a take on standard output', () => {
  it('holds name, outcome, things to fix, things to watch and report', () => {
    expect(resultLine(reviewed('ada', ['fix', 'watch', 'fix', 'well', 'watch', 'watch']))).toBe(
      'ada\treviewed\t2\t3\ttakes/ada.pdf',
    );
  });

  it('has as many columns when the take failed', () => {
    expect(resultLine(failed)).toBe('song.mp3\tfailed\t\t\t');
  });
});

describe('progress on standard error', () => {
  function told(isTTY: boolean): string {
    let text = '';
    const progress = progressTo({ write: (more) => (text += more), isTTY });
    progress({ done: 1, total: 3, end: reviewed('ada', []) });
    progress({ done: 2, total: 3, end: failed });
    progress({ done: 3, total: 3, end: reviewed('ben', []) });
    return text;
  }

  it('is a plain line a take where nobody watches', () => {
    expect(told(false)).toBe(
      '1/3 ada: reviewed\n2/3 week 1/song.mp3: only WAV is read; save it as WAV\n3/3 ben: reviewed\n',
    );
  });

  // ECMA-48: CSI 2 K (erase in line) is ESC [ 2 K; carriage return goes back to the start of the line.
  it('is one line written anew on a terminal, except that failures stay', () => {
    const anew = '\r\u001b[2K';
    expect(told(true)).toBe(
      `${anew}1/3 ada: reviewed${anew}2/3 week 1/song.mp3: only WAV is read; save it as WAV\n${anew}3/3 ben: reviewed\n`,
    );
  });
});

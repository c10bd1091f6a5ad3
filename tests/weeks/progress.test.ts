import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import type { Failure } from '../../src/base/index.js';
import {
  type FoundResult,
  type LostTake,
  type ProgressResult,
  progressResultJsonSchema,
} from '../../src/weeks/index.js';
import { progressOf } from '../helpers/progress-of.js';
import { sampleReview } from '../helpers/sample-review.js';
import { atTempo, day, inBar, notJudged, takeOfWeeks } from '../helpers/weeks.js';

const { tool } = sampleReview();

function progress(results: readonly FoundResult[], lost: readonly LostTake[] = []): ProgressResult {
  return progressOf({ tool, results, lost, failures: [] });
}

function onlyPlayer(results: readonly FoundResult[], lost: readonly LostTake[] = []) {
  const { pieces } = progress(results, lost);
  const [piece, ...others] = pieces;
  const [player, ...more] = piece?.players ?? [];
  if (piece === undefined || player === undefined || others.length + more.length > 0) throw new Error('not one player');
  return { piece, player };
}

function followed(results: readonly FoundResult[], measure: string) {
  const found = onlyPlayer(results).player.measures.find((one) => one.measure === measure);
  if (found === undefined) throw new Error(`${measure} is not followed`);
  return found;
}

describe('the sound', () => {
  const breathing = (harmonicsToNoiseDb: number) => ({
    changed: { breathNoise: { harmonicsToNoiseDb, intervalDb: [20, 40], count: 9, notes: [] } },
  });

  // by hand: 1.96 · √2 · √(0.7² + 1.5²) = 4.6 dB between two takes
  it('has changed with more breath in it than takes of one day differ by, for neither better nor worse', () => {
    const change = (to: number) =>
      followed([takeOfWeeks(breathing(31)), takeOfWeeks({ date: day(7), ...breathing(to) })], 'breath-noise');
    expect([26.5, 26.3, 35.7].map((to) => change(to).sinceFirst?.verdict)).toEqual(['none', 'different', 'different']);
    expect(change(26.3).sinceFirst?.smallest).toBeCloseTo(4.6, 1);
  });

  it('is steadier when long notes sway less', () => {
    const swaying = (wobbleCents: number) => ({
      changed: { steadiness: { wobbleCents, intervalCents: [1, 9], count: 9, vibratoCount: 0 } },
    });
    const change = (to: number) =>
      followed([takeOfWeeks(swaying(8)), takeOfWeeks({ date: day(7), ...swaying(to) })], 'long-notes');
    // 1.96 · √2 · √(0.6² + 1²) = 3.2 cents
    expect([5, 4, 12].map((to) => change(to).sinceFirst?.verdict)).toEqual(['none', 'better', 'worse']);
  });
});

describe('the document', () => {
  it('is valid against the schema that is published', () => {
    const validate = new Ajv2020().compile(progressResultJsonSchema());
    const document = progress([takeOfWeeks(), takeOfWeeks({ date: day(7), findings: [inBar('3')] })]);
    expect([validate(JSON.parse(JSON.stringify(document))), validate.errors]).toEqual([true, null]);
    expect(validate({ ...document, version: 2 })).toBe(false);
  });

  it('is the same for the same results', () => {
    const results = [takeOfWeeks(), takeOfWeeks({ date: day(7) }), takeOfWeeks({ player: 'Bo', date: day(1) })];
    expect(JSON.stringify(progress(results))).toBe(JSON.stringify(progress(results)));
  });

  it('holds nothing of players when there is no result', () => {
    expect(progress([])).toMatchObject({ takes: 0, pieces: [], unplaced: [] });
  });
});

describe('players', () => {
  // Source: definition; Unicode Standard Annex 15: é as one letter and as e with an accent are the same text.
  it('meet under all ways of writing their name, and differ by their accents', () => {
    const spellings = ['Ada Lindqvist', 'ada-lindqvist', 'Ada  Lindqvist ', 'ADA_LINDQVIST', 'Ada Lindqvist'];
    const results = spellings.map((player, i) => takeOfWeeks({ player, date: day(7 * i) }));
    const { player } = onlyPlayer(results);
    expect([player.player, player.days.length]).toEqual(['Ada Lindqvist', 5]);
    const names = ['Zoe Ek', 'Zoé Ek', 'Zoe\u0301 Ek'].map((name) => takeOfWeeks({ player: name }));
    expect(progress(names).pieces[0]?.players.map((one) => one.days[0]?.takes)).toEqual([1, 2]);
  });

  it('without a name or a day are listed, not dropped', () => {
    const { unplaced, pieces, takes } = progress([
      takeOfWeeks(),
      takeOfWeeks({ player: null, file: 'a.json' }),
      takeOfWeeks({ date: null, file: 'b.json' }),
      takeOfWeeks({ date: '2026-02-30', file: 'c.json' }),
    ]);
    expect(unplaced.map(({ file }) => file)).toEqual(['a.json', 'b.json', 'c.json']);
    expect([takes, pieces[0]?.players.length]).toEqual([4, 1]);
  });
});

describe('a recording with two results', () => {
  const sha256 = 'ab'.repeat(32);

  it('counts once', () => {
    const { repeated, takes } = progress([
      takeOfWeeks({ sha256, file: 'one.json' }),
      takeOfWeeks({ sha256, file: 'two.json' }),
    ]);
    expect(takes).toBe(1);
    expect(repeated).toEqual([{ sha256, counted: 'one.json', passedOver: ['two.json'], differ: false }]);
  });

  it('counts as what was reviewed, by the newer program; another day is told', () => {
    const newer = { tool: { name: 'takesheet', version: '0.10.0' } };
    const older = { tool: { name: 'takesheet', version: '0.9.3' } };
    const { repeated, pieces } = progress([
      takeOfWeeks({ sha256, file: 'old.json', changed: older }),
      takeOfWeeks({ sha256, file: 'new.json', changed: newer, date: day(1) }),
      takeOfWeeks({ sha256, file: 'poor.json', changed: { ...newer, outcome: 'too-poor' } }),
    ]);
    expect(repeated).toEqual([{ sha256, counted: 'new.json', passedOver: ['old.json', 'poor.json'], differ: true }]);
    expect(pieces[0]?.players[0]?.days).toEqual([{ date: day(1), week: '2026-03-02', takes: 1 }]);
  });
});

describe('an étude whose file changed', () => {
  const { score } = takeOfWeeks().result;
  const other = 'cd'.repeat(32);

  it('is compared when title, part, bars and notes are the same', () => {
    const { piece, player } = onlyPlayer([
      takeOfWeeks(),
      takeOfWeeks({ date: day(7), changed: { score: { ...score, sha256: other } } }),
    ]);
    expect([piece.change, player.days.length]).toEqual(['compared', 2]);
    expect(piece.files.map(({ sha256, firstDate }) => [sha256, firstDate])).toEqual([
      [score.sha256, day(0)],
      [other, day(7)],
    ]);
  });

  it('is followed apart when it has other notes', () => {
    const changed = { score: { ...score, sha256: other, notes: score.notes + 1 } };
    const { pieces } = progress([takeOfWeeks(), takeOfWeeks({ date: day(7), changed })]);
    expect(pieces.map(({ change, notes, players }) => [change, notes, players[0]?.days.length])).toEqual([
      ['apart', score.notes, 1],
      ['apart', score.notes + 1, 1],
    ]);
    expect(pieces.flatMap(({ players }) => players[0]?.measures.map((one) => one.sinceFirst))).not.toContainEqual(
      expect.objectContaining({ verdict: expect.anything() }),
    );
  });

  it('is one étude under two titles when the file is the same', () => {
    const renamed = { score: { ...score, title: 'Slow Study' } };
    const { piece } = onlyPlayer([takeOfWeeks(), takeOfWeeks({ date: day(7), changed: renamed })]);
    expect([piece.title, piece.change]).toEqual(['Slow Study', 'none']);
  });
});

describe('numbers over days', () => {
  // By hand: 100 · played / marked.
  it('are the mean of the takes of a day, which is also what the noise comes from', () => {
    const results = [
      takeOfWeeks({ changed: atTempo(80) }),
      takeOfWeeks({ changed: atTempo(84) }),
      takeOfWeeks({ date: day(7), changed: atTempo(99) }),
    ];
    const tempo = followed(results, 'tempo');
    expect(tempo.days).toEqual([
      { date: day(0), value: 82, takes: [80, 84] },
      { date: day(7), value: 99, takes: [99] },
    ]);
    const noise = progress(results).measures.find(({ measure }) => measure === 'tempo')?.noise;
    // Bland & Altman 1996: one pair that differs by 4 has the standard deviation √(16 / 2).
    expect(noise?.fromTakes).toEqual({ standardDeviation: 2.828, degreesOfFreedom: 1, days: 1 });
    expect(tempo.sinceFirst?.verdict).toBe('better');
    expect(tempo.sinceFirst?.smallest).toBeCloseTo(1.96 * (noise?.standardDeviation ?? 0) * Math.sqrt(1 / 2 + 1), 2);
  });

  it('are not called changed within the noise', () => {
    const tempo = followed(
      [takeOfWeeks({ changed: atTempo(96) }), takeOfWeeks({ date: day(7), changed: atTempo(99) })],
      'tempo',
    );
    expect(tempo.sinceFirst).toMatchObject({ difference: 3, verdict: 'none' });
  });

  it('are stable only when no day left the noise, and otherwise went to and fro', () => {
    const course = (...percents: number[]) =>
      followed(
        percents.map((percent, i) => takeOfWeeks({ date: day(7 * i), changed: atTempo(percent) })),
        'tempo',
      ).course;
    expect([course(99, 98, 100), course(99, 80, 100), course(80, 99), course(99)]).toEqual([
      'stable',
      'to-and-fro',
      'changed',
      null,
    ]);
  });

  it('are not there, and never 0, where a criterion was not judged', () => {
    const forSlurs = { notMeasured: 'not judged: all slurred for practice', code: 'brief-all-slurred' };
    const forTempo = { notMeasured: 'not judged: below the tempo for practice', code: 'brief-under-tempo' };
    const slurred = notJudged('articulation', forSlurs.notMeasured, forSlurs.code);
    const slow = notJudged('tempo', forTempo.notMeasured, forTempo.code);
    for (const [changed, measure, reason] of [
      [slurred, 'staccato', forSlurs],
      [slurred, 'slurs', forSlurs],
      [slow, 'tempo', forTempo],
      [slow, 'steadiness', forTempo],
    ] as const) {
      const { days, sinceFirst } = followed(
        [takeOfWeeks({ changed }), takeOfWeeks({ date: day(7), changed })],
        measure,
      );
      expect(days.map(({ value, takes }) => [value, takes])).toEqual([
        [reason, []],
        [reason, []],
      ]);
      expect(sinceFirst).toBeNull();
    }
  });

  it('start with the first day: one take alone has nothing to compare', () => {
    const { player } = onlyPlayer([takeOfWeeks({ findings: [inBar('3')] })]);
    expect(player.measures.every(({ sinceFirst, sinceLast }) => sinceFirst === null && sinceLast === null)).toBe(true);
    expect(player.bars.map(({ bar, status }) => [bar, status])).toEqual([['3', 'seen']]);
  });

  // By hand from the sample: 144 notes of which one has another pitch and one is left out.
  it('say how many notes are as written', () => {
    const written = followed([takeOfWeeks()], 'as-written');
    const { notes } = takeOfWeeks().result;
    expect(notes.map(({ status }) => status).filter((status) => status !== 'as-written')).toHaveLength(2);
    expect(written.days[0]?.value).toBeCloseTo((100 * (notes.length - 2)) / notes.length, 2);
  });
});

describe('bars', () => {
  const story = (weeks: readonly (readonly string[])[]) => {
    const results = weeks.map((findings, i) =>
      takeOfWeeks({ date: day(7 * i), findings: findings.map((weight) => inBar('3', weight as 'fix' | 'watch')) }),
    );
    const [found] = onlyPlayer(results).player.bars;
    return found === undefined ? null : [found.status, found.since];
  };

  // Source: definition.
  it.each([
    ['fixed', [['fix'], []], day(7)],
    ['fixed', [['fix'], [], ['fix'], [], []], day(21)],
    ['eased', [['fix'], ['watch']], day(7)],
    ['still', [['fix'], ['fix']], day(0)],
    ['still', [['fix'], ['watch'], ['fix']], day(14)],
    ['returning', [['fix'], [], ['fix']], day(14)],
    ['new', [[], ['fix']], day(7)],
    ['grown', [['watch'], ['fix']], day(7)],
  ] as const)('are %s after %j', (status, weeks, since) => {
    expect(story(weeks)).toEqual([status, since]);
  });

  it('have no story when nothing was ever to fix', () => {
    expect(story([['watch'], []])).toBeNull();
  });

  it('are fixed only when they are free in all takes of the day', () => {
    const { player } = onlyPlayer([
      takeOfWeeks({ findings: [inBar('3')] }),
      takeOfWeeks({ date: day(7) }),
      takeOfWeeks({ date: day(7), findings: [inBar('3')] }),
    ]);
    expect(player.bars[0]).toMatchObject({ status: 'still', days: ['fix', 'fix'] });
  });

  it('are not called fixed when the criterion was not judged, or the bar not played', () => {
    const slurred = notJudged('articulation', 'not judged: all slurred for practice');
    const first = takeOfWeeks({ findings: [inBar('3', 'fix', 'slur-broken')] });
    const unjudged = onlyPlayer([first, takeOfWeeks({ date: day(7), changed: slurred })]).player.bars[0];
    expect(unjudged).toMatchObject({ status: 'not-judged', days: ['fix', 'not-judged'], since: null });
    const notes = first.result.notes.map((note) =>
      note.bar === '3' ? { ...note, status: 'left-out' as const } : note,
    );
    const unplayed = onlyPlayer([first, takeOfWeeks({ date: day(7), changed: { notes } })]).player.bars[0];
    expect(unplayed?.status).toBe('not-judged');
  });

  it('count a finding that others go before as what it is by itself', () => {
    const led = { ...inBar('9', 'watch'), ownWeight: 'fix' as const };
    const { player } = onlyPlayer([takeOfWeeks({ findings: [led] }), takeOfWeeks({ date: day(7) })]);
    expect(player.bars[0]).toMatchObject({ bar: '9', status: 'fixed' });
  });

  it('are mastered by the section when somebody had them to fix and nobody has', () => {
    const { pieces } = progress([
      takeOfWeeks({ player: 'Ada', findings: [inBar('3'), inBar('5')] }),
      takeOfWeeks({ player: 'Bo', findings: [inBar('5')] }),
      takeOfWeeks({ player: 'Ada', date: day(7) }),
      takeOfWeeks({ player: 'Bo', date: day(7), findings: [inBar('5')] }),
    ]);
    expect(pieces[0]?.section.bars.map(({ bar, had, have, mastered }) => [bar, had, have, mastered])).toEqual([
      ['3', ['Ada'], [], true],
      ['5', ['Ada', 'Bo'], ['Bo'], false],
    ]);
  });
});

describe('the goal for the next lesson', () => {
  const goal = (...results: readonly FoundResult[]) => onlyPlayer(results).player.goal;

  // Source: definition.
  it('is what the latest take tells first of what is to fix, with all bars of its kind', () => {
    const now = [inBar('9', 'watch'), inBar('5', 'fix', 'slur-broken'), inBar('3'), inBar('4', 'fix', 'slur-broken')];
    expect(goal(takeOfWeeks({ findings: [inBar('3')] }), takeOfWeeks({ date: day(7), findings: now }))).toEqual({
      about: 'bars',
      kind: 'slur-broken',
      bars: ['4', '5'],
    });
  });

  it('is what slipped back where nothing is to fix, then what is to be heard again, then what is worth a listen', () => {
    const fix = takeOfWeeks({ findings: [inBar('3')], changed: atTempo(99) });
    const later = (findings: ReturnType<typeof inBar>[], tempo = 99, changed = {}) =>
      takeOfWeeks({ date: day(7), findings, changed: { ...atTempo(tempo), ...changed } });
    expect(goal(fix, later([inBar('3', 'watch')], 80))).toEqual({ about: 'measure', measure: 'tempo' });
    expect(goal(fix, later([inBar('3', 'watch')]))).toEqual({ about: 'listen', kind: 'wrong-note', bars: ['3'] });
    const notes = fix.result.notes.map((note) => (note.bar === '3' ? { ...note, status: 'left-out' as const } : note));
    expect(goal(fix, later([], 99, { notes }))).toEqual({ about: 'hear-again', bars: ['3'] });
    expect(goal(fix, later([]))).toEqual({ about: 'keep' });
  });

  it('may be about the playing as a whole, whose story is told apart from the bars', () => {
    const rushing = { ...inBar('1', 'fix', 'rushing'), criterion: 'tempo' as const };
    const results = [takeOfWeeks(), takeOfWeeks({ date: day(7), findings: [rushing] })];
    const { player } = onlyPlayer(results);
    expect([player.goal, player.bars]).toEqual([{ about: 'throughout', kind: 'rushing' }, []]);
    expect(player.throughout).toEqual([
      { kind: 'rushing', criterion: 'tempo', status: 'new', days: ['clear', 'fix'], since: day(7) },
    ]);
    const mended = onlyPlayer([...results, takeOfWeeks({ date: day(14) })]).player;
    expect([mended.goal, mended.throughout[0]?.status]).toEqual([{ about: 'keep' }, 'fixed']);
  });

  it('is not there without a reviewed take', () => {
    expect(goal(takeOfWeeks({ changed: { outcome: 'too-poor', notes: [], criteria: [] } }))).toBeNull();
  });
});

describe('gaps', () => {
  const sha256 = takeOfWeeks().result.score.sha256;

  // 2, 9 and 16 March 2026 are Mondays (perpetual calendar).
  it('are weeks in which others played, from the player’s first week on', () => {
    const { pieces } = progress([
      ...[0, 7, 15].map((after) => takeOfWeeks({ player: 'Ada', date: day(after) })),
      takeOfWeeks({ player: 'Bo', date: day(2) }),
      takeOfWeeks({ player: 'Bo', date: day(20) }),
      takeOfWeeks({ player: 'Cy', date: day(14) }),
    ]);
    expect(pieces[0]?.players.map(({ player, gaps }) => [player, gaps.map(({ why, week }) => [why, week])])).toEqual([
      ['Ada', []],
      ['Bo', [['no-take', '2026-03-09']]],
      ['Cy', []],
    ]);
  });

  it('are takes that were not reviewed, with the reason, and no number comes from them', () => {
    const { player } = onlyPlayer([
      takeOfWeeks(),
      takeOfWeeks({ date: day(7), changed: { outcome: 'too-poor', notes: [], criteria: [] } }),
      takeOfWeeks({ date: day(14), changed: { outcome: 'not-this-score', notes: [], criteria: [] } }),
    ]);
    expect(player.gaps.map(({ date, why }) => [date, why])).toEqual([
      [day(7), 'too-poor'],
      [day(14), 'not-this-score'],
    ]);
    expect(player.days.map(({ date }) => date)).toEqual([day(0)]);
  });

  it('are takes that could not be read, unless they were reviewed later', () => {
    const fault: Failure = { code: 'wav-without-audio', facts: {} };
    const lost = {
      file: 'week 2/x.wav',
      scoreSha256: sha256,
      player: 'ada lindqvist',
      date: day(7),
      fault,
    };
    const { player } = onlyPlayer([takeOfWeeks(), takeOfWeeks({ date: day(14) })], [lost]);
    expect(player.gaps).toEqual([
      {
        week: '2026-03-09',
        date: day(7),
        why: 'failed',
        file: 'week 2/x.wav',
        detail: 'the WAV file holds no audio; record or copy the take again',
        fault: { code: 'wav-without-audio' },
      },
    ]);
    const { file } = takeOfWeeks().result.take;
    expect(onlyPlayer([takeOfWeeks()], [{ ...lost, file }]).player.gaps).toEqual([]);
    expect(progress([takeOfWeeks()], [{ ...lost, player: null }]).unplaced).toMatchObject([{ outcome: 'failed' }]);
  });
});

import { describe, expect, it } from 'vitest';
import { readBrief } from '../../src/brief/index.js';
import { drawTakeReport } from '../../src/report/index.js';
import { toStudyDocument } from '../../src/result/index.js';
import { type Part, readPart, type TempoBeat, tempoBeat } from '../../src/score/index.js';
import { studyPlan } from '../../src/study/index.js';
import { WORDS as GERMAN } from '../../src/words/de/index.js';
import { WORDS as ENGLISH } from '../../src/words/en/index.js';
import { wordsIn } from '../../src/words/index.js';
import { saidOf } from '../../src/words/rules/said-of.js';
import { playedAsWritten } from '../helpers/marked-excerpts.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { resultOf, sampleReview } from '../helpers/sample-review.js';
import { attributes, direction, note, scoreOf } from '../score/score-of.js';

const metronome = direction(
  '<metronome><beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute></metronome>',
);

/** Two bars of six eighths, three eighths a second. */
function inSixEighths(): Part {
  const eighths = ['C5', 'D5', 'E5', 'F5', 'E5', 'D5'].map((pitch) => note(pitch, 1, { type: 'eighth' })).join('');
  const first = attributes(2, 0, '6/8');
  return readPart(scoreOf([first + metronome + eighths, ...Array.from({ length: 7 }, () => eighths)]));
}

describe('what a metronome counts', () => {
  const cutTime = readPart(
    scoreOf([
      attributes(1, 0, '2/2') +
        direction('<metronome><beat-unit>half</beat-unit><per-minute>60</per-minute></metronome>') +
        note('C5', 4, { type: 'whole' }),
    ]),
  );
  const inHalves = studyPlan(cutTime, readBrief('', cutTime));

  // Common practice: 6/8, 9/8 and 12/8 are compound; 3/8 and 3/4 are simple.
  it.each([
    [[[6, 8]], 'dotted-quarter'],
    [[[9, 8]], 'dotted-quarter'],
    [
      [
        [12, 8],
        [6, 8],
      ],
      'dotted-quarter',
    ],
    [[[3, 8]], 'quarter'],
    [[[3, 4]], 'quarter'],
    [[[6, 4]], 'quarter'],
    [[[2, 2]], 'half'],
    [[[3, 2]], 'half'],
    [
      [
        [2, 2],
        [4, 4],
      ],
      'quarter',
    ],
    [
      [
        [6, 8],
        [3, 4],
      ],
      'quarter',
    ],
    [[], 'quarter'],
  ] as [number[][], TempoBeat][])('%j: %s', (metres, beat) => {
    const bars = metres.map(([beats = 0, beatType = 0]) => ({ beats, beatType }));
    expect(tempoBeat({ bars, tempos: [{ atQuarters: 0, quarterBpm: 96, printed: false }] })).toBe(beat);
  });

  // A metronome mark names the note to be counted (common practice); eighths are no count of a page.
  it.each([
    ['2/2', 'quarter', '', 'quarter'],
    ['2/2', 'half', '', 'half'],
    ['4/4', 'half', '', 'half'],
    ['6/8', 'quarter', '', 'quarter'],
    ['6/8', 'eighth', '', 'dotted-quarter'],
    ['3/4', 'quarter', '<beat-unit-dot/>', 'dotted-quarter'],
    ['4/4', 'eighth', '', 'quarter'],
  ])('%s under a metronome mark of a %s note%s: %s', (metre, unit, dot, beat) => {
    const mark = direction(`<metronome><beat-unit>${unit}</beat-unit>${dot}<per-minute>60</per-minute></metronome>`);
    expect(tempoBeat(readPart(scoreOf([attributes(2, 0, metre) + mark + note('C5', 2, { type: 'quarter' })])))).toBe(
      beat,
    );
  });

  it('is a half note in cut time, and is said so', () => {
    expect(wordsIn('en').study.page.length({ bars: 8, seconds: 16, ...inHalves.tempo })).toContain(
      'at 60 half notes a minute',
    );
    expect(wordsIn('de').study.page.length({ bars: 8, seconds: 16, ...inHalves.tempo })).toContain(
      'bei 60 Halben in der Minute',
    );
  });
});

describe('in six eighths', () => {
  const part = inSixEighths();

  it('documents count quarters all the same', () => {
    expect(part.tempos[0]?.quarterBpm).toBe(90);
  });

  it('praise and results name what a metronome counts', () => {
    const about = { what: 'steady-tempo', quarterBpm: 90, beat: 'dotted-quarter', percent: 1 } as const;
    const said = [ENGLISH, GERMAN].map((words) => saidOf(words.findings['went-well'].text, { about }));
    expect(said[0]).toContain('steady at 60 dotted quarters a minute');
    expect(said[1]).toContain('stetig: 60 punktierte Viertel in der Minute');
    expect(resultOf({ ...sampleReview(), part }).tempo).toMatchObject({ countedIn: 'dotted-quarter' });
    expect(resultOf(sampleReview()).tempo).toMatchObject({ countedIn: 'quarter' });
  });

  // 60 dotted quarters; practice begins at 0.6 of it, 36
  it('a study sheet counts dotted quarters', () => {
    const plan = studyPlan(part, readBrief('', part));
    expect(wordsIn('en').study.page.length({ bars: 8, seconds: 16, ...plan.tempo })).toContain(
      'at 60 dotted quarters a minute',
    );
    expect(wordsIn('de').study.page.length({ bars: 8, seconds: 16, ...plan.tempo })).toContain(
      'bei 60 punktierten Vierteln in der Minute',
    );
    const { practice } = toStudyDocument(plan, 'en') as { practice: { text: string }[] };
    const said = practice.map(({ text }) => text).join(' ');
    expect(said).toContain('Metronome at 36 dotted quarters a minute.');
    expect(said).toContain('Back to 36.');
    expect(said).toMatch(/Raise the metronome in steps: 36, .* and 60\./);
  });

  it('a take’s pages count dotted quarters', async () => {
    const played = playedAsWritten(part);
    const bars = part.bars.map(({ bar, pass, startQuarters }) => ({ bar, pass, startQuarters, quarterBpm: 84 }));
    const result = { ...played, tempo: { markedQuarterBpm: 90, playedQuarterBpm: 84, bars } };
    const loudness = { hopSeconds: 0.02, levelDb: new Float32Array(1000).fill(-30) };
    const creationDate = new Date('2026-03-02T00:00:00Z');
    const pdf = inspectPdf(await drawTakeReport({ result, part, loudness, paper: 'a4', creationDate }));
    expect(pdf.pageTexts.join(' ')).toContain('your tempo in dotted quarters a minute');
    expect(pdf.elements.map(({ alternative }) => alternative).join(' ')).toContain(
      'between 56 and 56 dotted quarters a minute',
    );
  });
});

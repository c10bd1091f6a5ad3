import { describe, expect, it } from 'vitest';
import type { Fault, TakePlan, VoiceName } from '../../src/demo/index.js';
import {
  demoPart,
  type HeardTake,
  hearTake,
  middle,
  onsetErrors,
  shareWithin,
  wrongStatuses,
} from '../helpers/heard-take.js';

/**
 * Takes of the demo étude with known truth. The synthesiser decides the onsets before it renders them, so they are
 * known to the sample; tests/demo checks it by textbook measurements of its own.
 */
const PART = demoPart();
const VOICES: readonly VoiceName[] = ['clarinet', 'flute', 'brass'];

/** Working value: the order of two sounds is heard from about 20 ms on (Hirsh 1959, from memory). */
const WITHIN_SECONDS = 0.025;

function expectPrecise(heard: HeardTake): void {
  const errors = onsetErrors(heard);
  expect(errors.length).toBeGreaterThan(0.97 * heard.meant.size);
  expect(shareWithin(errors, WITHIN_SECONDS)).toBeGreaterThanOrEqual(0.97);
  expect(middle(errors)).toBeLessThanOrEqual(0.008);
}

function expectInOrder({ alignment }: HeardTake): void {
  const times = alignment.notes.flatMap((n) => (n.onsetSeconds === undefined ? [] : [n]));
  expect(times.length).toBeGreaterThan(1);
  for (const note of times) expect(note.offsetSeconds!).toBeGreaterThan(note.onsetSeconds!);
  times.slice(1).forEach((note, k) => {
    expect(note.onsetSeconds!).toBeGreaterThan(times[k]!.onsetSeconds!);
  });
}

function expectPlayedThrough(heard: HeardTake): void {
  const { fit, share, added, restarts, skips } = heard.alignment;
  expect(wrongStatuses(heard)).toEqual([]);
  expect({ fit, share, added, restarts, skips }).toEqual({
    fit: 'this-part',
    share: 1,
    added: [],
    restarts: [],
    skips: [],
  });
  expectPrecise(heard);
  expectInOrder(heard);
}

describe.each(VOICES)('a clean take of the étude, %s', (voice) => {
  const heard = hearTake(PART, { voice });

  it('has every note as written, nothing added, in order and in place', () => {
    expectPlayedThrough(heard);
    expect(heard.alignment.offsetSemitones).toBe(0);
    expect(Math.abs(heard.alignment.tuningCents)).toBeLessThan(4);
  });

  it('has the ends of its notes within 30 ms for nine of ten', () => {
    const errors = heard.alignment.notes.map((n) =>
      Math.abs(n.offsetSeconds! - heard.meant.get(n.index)!.offsetSeconds),
    );
    expect(shareWithin(errors, 0.03)).toBeGreaterThanOrEqual(0.9);
  });

  it('is sure of what it says', () => {
    expect(heard.alignment.notes.every((n) => n.confidence >= 0 && n.confidence <= 1)).toBe(true);
    expect(middle(heard.alignment.notes.map((n) => n.confidence))).toBeGreaterThan(0.9);
  });
});

describe('a take is followed', () => {
  it.each([0.5, 0.75, 1.25, 1.6])('at %d of the marked tempo', (tempoFactor) => {
    expectPlayedThrough(hearTake(PART, { tempoFactor }));
  });

  it.each<[string, Partial<TakePlan>]>([
    ['that gets faster by a sixth', { tempoDrift: 1.16 }],
    ['that gets slower by a fifth', { tempoDrift: 0.8 }],
    ['with 20 ms of scatter in its onsets', { timingScatterSeconds: 0.02 }],
    ['with a vibrato of 30 cents', { vibrato: { rateHz: 5.5, depthCents: 30 }, voice: 'flute' }],
    ['without any change of level', { contrast: 0 }],
    ['in a hall with a second of reverberation', { roomSeconds: 1 }],
    ['over noise 30 dB below', { signalToNoiseDb: 30 }],
    ['that begins after seven seconds and goes on five after its end', { leadInSeconds: 7, tailSeconds: 5 }],
    ['at 48 kHz', { sampleRateHz: 48000, voice: 'brass' }],
  ])('%s', (_what, plan) => {
    const heard = hearTake(PART, plan);
    expect(wrongStatuses(heard).length).toBeLessThanOrEqual(1);
    expect(heard.alignment.fit).toBe('this-part');
    expect(heard.alignment.restarts.length + heard.alignment.skips.length).toBe(0);
    expectPrecise(heard);
    expectInOrder(heard);
  });

  it.each([-60, -35, 35, 60])('%d cents from A = 440 Hz, which it tells', (tuningCents) => {
    const heard = hearTake(PART, { tuningCents });
    expectPlayedThrough(heard);
    expect(heard.alignment.offsetSemitones).toBe(0);
    expect(Math.abs(heard.alignment.tuningCents - tuningCents)).toBeLessThan(4);
  });

  // 2: a part in B♭ read as if it were in C sounds a major second higher (common practice).
  it.each<[string, number, VoiceName]>([
    ['an octave higher', 12, 'clarinet'],
    ['an octave lower', -12, 'brass'],
    ['like the concert-pitch part', 2, 'clarinet'],
    ['like a part in another key', -7, 'flute'],
  ])('when it sounds %s', (_what, transposeSemitones, voice) => {
    const heard = hearTake(PART, { transposeSemitones, voice });
    expect(heard.alignment.offsetSemitones).toBe(transposeSemitones);
    expectPlayedThrough(heard);
  });
});

describe.each(VOICES)('what was not as written, %s', (voice) => {
  const at = (bar: string, beat: number) => ({ bar, beat });
  const faults: readonly Fault[] = [
    { kind: 'misread', at: at('5', 2), misreading: 'carried-past-barline' },
    { kind: 'wrong-note', at: at('9', 1), semitones: 2 },
    { kind: 'missed-note', at: at('19', 4) },
    { kind: 'added-note', after: at('11', 4), semitones: -4 },
    { kind: 'wrong-note', at: at('16', 1), semitones: 4 },
  ];
  const heard = hearTake(PART, { voice, faults });

  it('is told note by note, and only that', () => {
    expect(wrongStatuses(heard)).toEqual([]);
    expectPrecise(heard);
    expectInOrder(heard);
  });

  it('with the added note where it slipped in', () => {
    const extra = heard.truth.filter((note) => note.index === null);
    expect(heard.alignment.added).toHaveLength(1);
    const [found] = heard.alignment.added;
    expect(found).toMatchObject({ midi: extra[0]!.playedMidi, afterIndex: extra[0]!.afterIndex });
    expect(Math.abs(found!.onsetSeconds - extra[0]!.onsetSeconds)).toBeLessThan(WITHIN_SECONDS);
    expect(found!.offsetSeconds).toBeGreaterThan(found!.onsetSeconds);
  });

  it('breaking off and beginning again is a restart; the second time counts', () => {
    const stop = PART.notes.find((n) => n.bar === '7' && n.beat === 2)!.index;
    const resume = PART.notes.find((n) => n.bar === '6' && n.beat === 1)!.index;
    const again = hearTake(PART, {
      voice,
      faults: [{ kind: 'restart', after: stop, resumeAt: resume, pauseSeconds: 1.2 }],
    });
    expect(again.alignment.restarts).toHaveLength(1);
    const [restart] = again.alignment.restarts;
    expect(restart!.resumedAtIndex).toBe(resume);
    // the note at which the player stopped is hard to tell from the one before it
    expect(Math.abs(restart!.stoppedAtIndex - stop)).toBeLessThanOrEqual(1);
    expect(Math.abs(restart!.onsetSeconds - again.meant.get(resume)!.onsetSeconds)).toBeLessThan(WITHIN_SECONDS);
    expect(wrongStatuses(again)).toEqual([]);
    expectPrecise(again);
    expectInOrder(again);
  });

  it('jumping over bars is a skip, not a row of missed notes', () => {
    const skipped = hearTake(PART, { voice, faults: [{ kind: 'skip', from: at('9', 1), to: at('10', 4) }] });
    const [from, to] = [
      PART.notes.find((n) => n.bar === '9')!.index,
      PART.notes.findLast((n) => n.bar === '10')!.index,
    ];
    expect(skipped.alignment.skips).toHaveLength(1);
    const [skip] = skipped.alignment.skips;
    expect(skip).toMatchObject({ fromIndex: from, toIndex: to });
    expect(Math.abs(skip!.onsetSeconds - skipped.meant.get(to + 1)!.onsetSeconds)).toBeLessThan(WITHIN_SECONDS);
    expect(wrongStatuses(skipped)).toEqual([]);
    expectPrecise(skipped);
  });
});

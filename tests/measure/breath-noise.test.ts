import { describe, expect, it } from 'vitest';
import type { TakePlan, VoiceName } from '../../src/demo/index.js';
import { measureTake } from '../../src/measure/index.js';
import { measureBreathNoise } from '../../src/measure/measures/breath-noise.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

const PART = demoPart();
const QUIET = { roomSeconds: 0, signalToNoiseDb: 80 } as const;
const breathIn = (plan: Partial<TakePlan>) => measureTake(hearTake(PART, { seed: 5, ...plan })).breathNoise;
const hidden = (code: string) => ({ notMeasured: { code, facts: {} } });

/**
 * White noise spreads evenly up to half the rate, 11025 Hz. The part is listened to at half of 22050 Hz, and harmonics are read up
 * to 0.36 of that: 3969 Hz, so that 4.4 dB less than all of the noise is heard. Source: arithmetic by hand; the tone has nearly
 * all of its power below.
 */
const HEARD_DB = 10 * Math.log10(11025 / 3969);

describe.each(['clarinet', 'flute', 'brass'] as const satisfies readonly VoiceName[])('a %s', (voice) => {
  it.each([-14, -18, -24, -30])('that breathes at %d dB is heard to', (breathDb) => {
    const measured = breathIn({ voice, breathDb, ...QUIET });
    if ('notMeasured' in measured) expect.fail(measured.notMeasured.code);
    expect(Math.abs(measured.harmonicsToNoiseDb - (-breathDb + HEARD_DB))).toBeLessThan(1);
    const [low, high] = measured.intervalDb;
    expect(high - low).toBeLessThan(1);
    expect(measured.count).toBe(24);
    for (const note of measured.notes) {
      expect(Math.abs(note.harmonicsToNoiseDb - measured.harmonicsToNoiseDb)).toBeLessThan(4);
    }
  });

  it('is heard alike in a room and loud or soft', () => {
    const dry = breathIn({ voice, breathDb: -18, ...QUIET }) as { harmonicsToNoiseDb: number };
    for (const plan of [
      { ...QUIET, roomSeconds: 0.5 },
      { ...QUIET, gainDb: -12 },
      { ...QUIET, gainDb: 6 },
    ]) {
      const other = breathIn({ voice, breathDb: -18, ...plan }) as { harmonicsToNoiseDb: number };
      expect(Math.abs(other.harmonicsToNoiseDb - dry.harmonicsToNoiseDb)).toBeLessThan(1);
    }
  });

  it('is not told of when the recording makes the noise', () => {
    for (const signalToNoiseDb of [40, 30, 25]) {
      expect(breathIn({ voice, breathDb: -42, roomSeconds: 0.3, signalToNoiseDb })).toEqual(hidden('recording-hisses'));
    }
  });
});

describe('breath is not told of', () => {
  const heard = hearTake(PART, { seed: 5, breathDb: -18, ...QUIET });
  const { notes, heldNotes, recording } = measureTake(heard);
  const context = { ...heard, notes };

  it('where the recorder moved its level, the coding leaves noise out, or the room rings', () => {
    const under = (changes: Partial<typeof recording>) =>
      measureBreathNoise(context, heldNotes, { ...recording, ...changes });
    expect(under({ levelRiding: true })).toEqual(hidden('level-moved'));
    expect(under({ onsetSpreadSeconds: 0.01 })).toEqual(hidden('sound-coded'));
    expect(under({ cautions: [{ code: 'speech-coding', facts: {} }] })).toEqual(hidden('sound-coded'));
    expect(under({ reverberationSeconds: 1.4 })).toEqual(hidden('room-rings'));
  });

  it('by few notes, nor by those with vibrato', () => {
    expect(measureBreathNoise(context, heldNotes.slice(0, 4), recording)).toEqual(hidden('too-few-held-notes'));
    const wavy = heldNotes.map((note) => ({ ...note, vibrato: { rateHz: 5, depthCents: 20 } }));
    expect(measureBreathNoise(context, wavy, recording)).toEqual(hidden('too-few-held-notes'));
  });
});

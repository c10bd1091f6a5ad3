import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notMeasured } from '../../src/base/index.js';
import type { TakePlan, VoiceName } from '../../src/demo/index.js';
import { listen } from '../../src/features/index.js';
import { type MeasureContext, measureTake } from '../../src/measure/index.js';
import { smallPart } from '../demo/small-part.js';
import { type HandNote, type HandOptions, handContext, playEvenly } from '../helpers/hand-context.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';
import { join, noise, RATE, sum, takeOf, tone } from '../helpers/tones.js';

/**
 * Source for all numbers here: ISO 3382-2:2008: the reverberation time is the time in which the level falls by 60 dB. A
 * sound that dies away evenly in decibels with a time T falls by 60 t / T.
 */
const PART = smallPart(Array.from({ length: 6 }, (_, i) => ({ midi: 60 + i, quarters: 1, rest: i === 0 ? 0 : 3 })));
const EVEN = playEvenly(PART);

/** After its end each note dies away as a room lets it, with its own time. */
function ringing(
  notes: readonly HandNote[],
  seconds: (index: number) => number,
  options: HandOptions = {},
): MeasureContext {
  const context = handContext(PART, notes, options);
  const power = context.features.power.slice();
  const hop = context.features.levelHopSeconds;
  for (const note of notes) {
    if (note.status === 'left-out') continue;
    for (let f = Math.round(note.offset / hop); f < power.length; f++) {
      const fallenDb = (60 * (f * hop - note.offset)) / seconds(note.index);
      power[f] = power[f]! + 10 ** ((note.levelDb - fallenDb) / 10);
    }
  }
  return { ...context, features: { ...context.features, power } };
}

const reverberation = (context: MeasureContext) => measureTake(context).recording.reverberationSeconds;

function seconds(context: MeasureContext): number {
  const value = reverberation(context);
  expect(value).toBeTypeOf('number');
  return value as number;
}

describe('reverberation', () => {
  it.each([0.3, 0.5, 0.8, 1.2, 2, 3, 6])('of %d s is found', (room) => {
    expect(Math.abs(seconds(ringing(EVEN, () => room)) / room - 1)).toBeLessThan(0.02);
  });

  it('is that of the room, not of the instrument falling silent before it, as a near microphone hears it', () => {
    const hop = 0.002;
    const context = handContext(PART, EVEN);
    const power = context.features.power.slice();
    for (const { offset } of EVEN) {
      for (let f = Math.round(offset / hop); f < power.length; f++) {
        const after = f * hop - offset;
        // the instrument falls by 400 dB a second, the room begins 20 dB below it and takes 1.5 s for 60 dB
        power[f] = power[f]! + 10 ** ((-24 - 400 * after) / 10) + 10 ** ((-44 - 40 * after) / 10);
      }
    }
    expect(context.features.levelHopSeconds).toBe(hop);
    expect(Math.abs(seconds({ ...context, features: { ...context.features, power } }) / 1.5 - 1)).toBeLessThan(0.05);
  });

  it('is that of the room when some notes are let go slowly', () => {
    const context = ringing(EVEN, (index) => (index === 1 || index === 3 ? 3 : 1));
    expect(Math.abs(seconds(context) - 1)).toBeLessThan(0.03);
  });

  it('does not hang on where the end of a note is put', () => {
    const context = ringing(EVEN, () => 1.5);
    const late = context.alignment.notes.map((note) => ({ ...note, offsetSeconds: note.offsetSeconds! + 0.2 }));
    const moved = { ...context, alignment: { ...context.alignment, notes: late } };
    expect(Math.abs(seconds(moved) - 1.5)).toBeLessThan(0.05);
  });

  it('is found over a floor that leaves twenty decibels, and not over one that leaves three', () => {
    // notes at −24: from 5 dB below them to 8 dB above the floor is 20 dB at −57, 3 dB at −40
    expect(Math.abs(seconds(ringing(EVEN, () => 1, { floorDb: -57 })) - 1)).toBeLessThan(0.06);
    expect(reverberation(ringing(EVEN, () => 1, { floorDb: -40 }))).toEqual(notMeasured('decay-hidden'));
  });

  it('is not measured where the sound stops dead', () => {
    expect(reverberation(handContext(PART, EVEN))).toEqual(notMeasured('decay-hidden'));
  });

  it('is not measured when fewer than two notes are followed by silence', () => {
    const why = notMeasured('too-few-silences');
    const only = (count: number) =>
      EVEN.map((note) => (note.index < count ? note : { ...note, status: 'left-out' as const }));
    expect(reverberation(ringing(only(0), () => 1))).toEqual(why);
    expect(reverberation(ringing(only(1), () => 1))).toEqual(why);
    expect(Math.abs(seconds(ringing(only(3), () => 1)) - 1)).toBeLessThan(0.02);
    const joined = smallPart(Array.from({ length: 12 }, () => ({ midi: 60, quarters: 1, slurredToNext: true })));
    expect(reverberation(handContext(joined, playEvenly(joined)))).toEqual(why);
  });

  it('is not read through notes that are not in the part', () => {
    const added = EVEN.map(({ index, offset }) => ({
      onsetSeconds: offset + 0.1,
      offsetSeconds: offset + 0.6,
      midi: 72,
      afterIndex: index,
    }));
    expect(reverberation(ringing(EVEN, () => 1, { alignment: { added } }))).toHaveProperty('notMeasured');
  });

  it('obeys its laws: gain leaves it, a stretch stretches it', () => {
    const room = fc.double({ min: 0.4, max: 2.4, noNaN: true });
    const gain = fc.integer({ min: -15, max: 15 });
    fc.assert(
      fc.property(room, gain, fc.double({ min: 0.8, max: 1.6, noNaN: true }), (time, gainDb, stretch) => {
        const before = seconds(ringing(EVEN, () => time));
        const louder = EVEN.map((note) => ({ ...note, levelDb: note.levelDb + gainDb }));
        expect(seconds(ringing(louder, () => time, { floorDb: -80 + gainDb })) / before).toBeCloseTo(1, 2);
        const slower = EVEN.map((note) => ({ ...note, onset: note.onset * stretch, offset: note.offset * stretch }));
        expect(seconds(ringing(slower, () => time * stretch)) / (before * stretch)).toBeCloseTo(1, 1);
      }),
      { numRuns: 20 },
    );
  });
});

describe('reverberation of a sound', () => {
  /** A tone of a second that dies away by a thousandth of its amplitude in the time of the room. */
  const ringingTone = (midi: number, room: number): Float32Array =>
    tone(midi, 3.5).map((x, i) => x * 10 ** ((-3 * Math.max(0, i / RATE - 1)) / room));

  it.each([0.6, 1.1, 1.8])('with %d s by formula is heard', (room) => {
    const part = smallPart([60, 64, 67].map((midi, i) => ({ midi, quarters: 1, rest: i === 0 ? 0 : 2.5 })));
    const tones = join(...part.notes.map((note) => ringingTone(note.soundingMidi, room)));
    const take = takeOf(sum(tones, noise(tones.length / RATE, -75)));
    const notes = playEvenly(part).map((note) => ({ ...note, onset: 3.5 * note.index, offset: 3.5 * note.index + 1 }));
    const features = listen(take, { lowestMidi: 55, highestMidi: 72 });
    const context = { ...handContext(part, notes), take, features };
    expect(Math.abs(seconds(context) / room - 1)).toBeLessThan(0.05);
  });

  // Source: the time the synthesiser's room was given (Schroeder 1962).
  it.each<VoiceName>(['clarinet', 'flute', 'brass'])('of performed takes is the time of their room, %s', (voice) => {
    const part = demoPart();
    const found = [0.5, 1, 2].map((roomSeconds) => seconds(hearTake(part, { voice, roomSeconds })));
    [0.5, 1, 2].forEach((room, k) => {
      expect(Math.abs(found[k]! / room - 1)).toBeLessThan(0.2);
    });
    expect(reverberation(hearTake(part, { voice, roomSeconds: 0 }))).toHaveProperty('notMeasured');
  });

  // the limits of the measure were chosen on the takes above; these are others: slower, faster, in more noise
  it.each<[VoiceName, Partial<TakePlan>]>([
    ['clarinet', { seed: 951, tempoFactor: 0.9 }],
    ['flute', { seed: 962, tempoFactor: 1.1, signalToNoiseDb: 40 }],
    ['brass', { seed: 973, signalToNoiseDb: 36 }],
  ])('of other takes is roughly that of their room, %s %j', (voice, plan) => {
    for (const room of [0.8, 1.6]) {
      const found = seconds(hearTake(demoPart(), { ...plan, voice, roomSeconds: room }));
      expect(Math.abs(found / room - 1)).toBeLessThan(0.35);
    }
  });
});

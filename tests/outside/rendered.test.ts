import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type MidiEvent, writeMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { reviewTake } from '../../src/review/index.js';
import type { Part } from '../../src/score/index.js';
import { demoPart, middle, shareWithin } from '../helpers/heard-take.js';
import { inFolder, needs, printedBy, soundBanks } from './programs.js';

/** Ticks of the MIDI file: at 60 quarters a minute a tick is a millisecond, so the file says seconds. */
const TICKS_A_SECOND = 1000;
const LEAD_SECONDS = 1;

/** Source: General MIDI Level 1, sound set, programs counted from 0. */
const PROGRAMS = { trumpet: 56, clarinet: 71, flute: 73 } as const;

/** One note as the MIDI file asks for it. */
interface AskedNote {
  readonly index: number;
  readonly midi: number;
  readonly onset: number;
  readonly offset: number;
}

/** The part at a tempo that gives way a little, each note sounding nine tenths of its time; one note is wrong. */
function asked(part: Part, quarterBpm: number, wrongIndex: number): AskedNote[] {
  const at = (quarters: number): number => LEAD_SECONDS + (60 / quarterBpm) * (quarters + 0.2 * Math.sin(quarters / 5));
  return part.notes.map((note) => ({
    index: note.index,
    midi: note.soundingMidi + (note.index === wrongIndex ? 1 : 0),
    onset: Math.round(at(note.onsetQuarters) * TICKS_A_SECOND) / TICKS_A_SECOND,
    offset: at(note.onsetQuarters + 0.9 * note.durationQuarters),
  }));
}

/** Source: Standard MIDI File 1.0, written by the npm package midi-file. */
function midiFile(notes: readonly AskedNote[], program: number): Uint8Array {
  const moments = notes.flatMap(({ midi, onset, offset }) => [
    { ticks: Math.round(onset * TICKS_A_SECOND), type: 'noteOn' as const, noteNumber: midi, velocity: 96 },
    { ticks: Math.round(offset * TICKS_A_SECOND), type: 'noteOff' as const, noteNumber: midi, velocity: 0 },
  ]);
  moments.sort((a, b) => a.ticks - b.ticks);
  let before = 0;
  const events: MidiEvent[] = moments.map(({ ticks, ...event }) => {
    const deltaTime = ticks - before;
    before = ticks;
    return { deltaTime, channel: 0, ...event };
  });
  const track: MidiEvent[] = [
    { deltaTime: 0, type: 'setTempo', microsecondsPerBeat: 1_000_000, meta: true },
    { deltaTime: 0, type: 'programChange', channel: 0, programNumber: program },
    ...events,
    { deltaTime: TICKS_A_SECOND, type: 'endOfTrack', meta: true },
  ];
  const header = { format: 0, numTracks: 1, ticksPerBeat: TICKS_A_SECOND } as const;
  return Uint8Array.from(writeMidi({ header, tracks: [track] }));
}

/** Rendered by fluidsynth, without its reverberation and chorus. */
function rendered(midi: Uint8Array, bank: string): Uint8Array {
  return inFolder((folder) => {
    const [score, take] = [join(folder, 'take.mid'), join(folder, 'take.wav')];
    writeFileSync(score, midi);
    printedBy('fluidsynth', ['-ni', '-q', '-R', '0', '-C', '0', '-r', '44100', '-O', 's16', '-F', take, bank, score]);
    return Uint8Array.from(readFileSync(take));
  });
}

describe.each(Object.entries(PROGRAMS))('a take played by the sampled %s of a sound bank', (voice, program) => {
  const part = demoPart();
  const wrongIndex = 40;
  const notes = asked(part, 84, wrongIndex);

  it('is heard as the MIDI file asks for it', async (context) => {
    needs(context, 'fluidsynth');
    for (const { name, file } of soundBanks(context)) {
      const bytes = rendered(midiFile(notes, program), file);
      const { result } = await reviewTake({
        ...({ bytes, part, file: '2026-03-02_Ada.wav', brief: null, paper: 'a4', jsonOnly: true } as const),
        who: { player: null, date: null, instrument: null },
        score: { file: 'etude.musicxml', sha256: '0'.repeat(64) },
        tool: { name: 'takesheet', version: '0.0.0' },
      });
      const said = `${voice} of ${name}`;
      expect([said, result.outcome]).toEqual([said, 'reviewed']);
      const other = result.notes.filter(({ status }) => status !== 'as-written').map(({ index }) => index);
      expect([said, other]).toEqual([said, [wrongIndex]]);
      expect(result.notes[wrongIndex]).toMatchObject({ status: 'other-pitch', playedMidi: notes[wrongIndex]!.midi });
      const apart = result.notes.map(({ index, onset }) => Math.abs(Number(onset ?? Number.NaN) - notes[index]!.onset));
      // a sampled attack takes some milliseconds to speak
      expect(middle(apart)).toBeLessThan(0.02);
      expect(shareWithin(apart, 0.05)).toBeGreaterThan(0.95);
    }
  });
});

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { encodeWav } from '../../src/decode/index.js';
import { type PlayedNote, performTake, type TakePlan } from '../../src/demo/index.js';
import { engravePart } from '../../src/engrave/index.js';
import { drawListeningRoom, type RoomInput, type RoomTake } from '../../src/report/index.js';
import type { ResultFinding } from '../../src/result/index.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { playedAsWritten } from './marked-excerpts.js';

/** Notes of six bars of four quarters: letter, octave and length in quarters; `r` rests. */
const BARS = ['G4 1,A4 1,B4 1,C5 1', 'D5 2,B4 2', 'C5 1,A4 1,F4 1,A4 1', 'r 4', 'E4 1,G4 1,C5 1,E5 1', 'D5 2,C5 2'];

/** A short part in which bars 2 and 3 are repeated and bar 4 is a rest: performed, 1 2 3 2 3 4 5 6, at 120 a minute. */
export const ROOM_PART = new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>
<score-partwise version="4.0"><work><work-title>Short Room</work-title></work>
<part-list><score-part id="P1"><part-name>Flute</part-name></score-part></part-list><part id="P1">
${BARS.map(
  (notes, i) =>
    `<measure number="${i + 1}">${
      i === 0
        ? '<attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef></attributes><direction><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>120</per-minute></metronome></direction-type><sound tempo="120"/></direction>'
        : ''
    }${i === 1 ? '<barline location="left"><repeat direction="forward"/></barline>' : ''}${notes
      .split(',')
      .map((note) => noteXml(note))
      .join('')}${i === 2 ? '<barline location="right"><repeat direction="backward"/></barline>' : ''}</measure>`,
).join('\n')}
</part></score-partwise>`);

function noteXml(note: string): string {
  const [pitch = '', length = '1'] = note.split(' ');
  const type = { '1': 'quarter', '2': 'half', '4': 'whole' }[length] ?? 'quarter';
  if (pitch === 'r') return `<note><rest measure="yes"/><duration>${length}</duration></note>`;
  return `<note><pitch><step>${pitch[0]}</step><octave>${pitch[1]}</octave></pitch><duration>${length}</duration><type>${type}</type></note>`;
}

/** A take with its sound and with what was really played: its result holds the truth, so that nothing is misheard. */
export interface PlayedTake {
  readonly take: RoomTake;
  readonly wav: Uint8Array;
  readonly truth: readonly PlayedNote[];
}

/** Plays a take and says of it what a perfect listener would. */
export function playedTake(
  part: Part,
  who: { readonly player: string | null; readonly date: string | null; readonly name: string },
  plan: Partial<TakePlan> = {},
  findings: readonly ResultFinding[] = [],
): PlayedTake {
  const sampleRateHz = 8000;
  const { samples, truth } = performTake(part, { seed: 3, voice: 'flute', sampleRateHz, roomSeconds: 0, ...plan });
  const written = playedAsWritten(part);
  const onsetOf = new Map(truth.flatMap((note) => (note.index === null ? [] : [[note.index, note] as const])));
  const durationSeconds = samples.length / sampleRateHz;
  const notes = written.notes.map((note) => {
    const { onset: _, offset: __, playedMidi: ___, ...rest } = note;
    const played = onsetOf.get(note.index);
    if (played === undefined) return { ...rest, status: 'left-out' as const };
    return { ...note, onset: played.onsetSeconds, offset: played.offsetSeconds };
  });
  const result = {
    ...written,
    take: { ...written.take, player: who.player, date: who.date, file: `${who.name}.wav`, durationSeconds },
    score: { ...written.score, file: 'short.musicxml' },
    criteria: [{ criterion: 'notes' as const, fix: 0, watch: 0, summary: '', of: 10, met: 10 - findings.length }],
    notes,
    findings: [...findings],
  };
  const levelsDb = powers(samples, sampleRateHz);
  const facts = { durationSeconds, levelsDb, levelHopSeconds: 0.1, kWeightedDb: levelsDb };
  const sound = `sound/${who.name}.wav`;
  return { take: { name: who.name, result, sound, facts, pages: null }, wav: encodeWav(samples, sampleRateHz), truth };
}

/** Power of stretches of 0.1 s, dBFS. */
function powers(samples: Float32Array, rateHz: number): (number | null)[] {
  const hop = rateHz / 10;
  return Array.from({ length: Math.floor(samples.length / hop) }, (_, i) => {
    const sum = samples.subarray(i * hop, (i + 1) * hop).reduce((total, x) => total + x * x, 0);
    return sum === 0 ? null : 10 * Math.log10(sum / hop);
  });
}

/** The short part, read and laid out. */
export async function shortPart(): Promise<RoomInput['parts'][number]> {
  const part = readPart(ROOM_PART);
  return { file: 'short.musicxml', part, engraved: await engravePart(engravingCopy(ROOM_PART)), targetBpm: null };
}

/** Writes a room with its sounds into a folder. */
export function writeRoom(folder: string, input: RoomInput, played: readonly PlayedTake[]): void {
  mkdirSync(join(folder, 'sound'), { recursive: true });
  for (const { take, wav } of played) writeFileSync(join(folder, take.sound ?? ''), wav);
  writeFileSync(join(folder, 'index.html'), drawListeningRoom(input));
}

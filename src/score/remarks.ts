import { alterOfSign } from './accidentals.js';
import type { ChosenVoice } from './printed/choose-voice.js';
import type { Line, LineNote } from './printed/read-line.js';
import type { PrintedBar } from './printed/types.js';

/** Rounded durations add up to a bar within this, in quarters. */
const FULL_BAR_TOLERANCE = 0.05;

/**
 * What a copyist would point out in the bars and notes themselves.
 *
 * @param bars bars as printed
 * @param line the player's line
 * @param chosen voice and staff that are read
 * @returns one sentence each, with the bar
 *
 * Source: common practice.
 */
export function printedRemarks(bars: readonly PrintedBar[], line: Line, chosen: ChosenVoice): string[] {
  return [
    ...voiceRemarks(chosen),
    ...bars.flatMap((bar) => bar.remarks.map((remark) => `Bar ${bar.number}: ${remark}`)),
    ...bars.flatMap((bar) => barLengthRemark(bar, bars)),
    ...slurRemarks(bars, line),
    ...signRemarks(bars, line),
  ];
}

function voiceRemarks(chosen: ChosenVoice): string[] {
  const { notesElsewhere, voice } = chosen;
  if (notesElsewhere === 0) return [];
  const notes = notesElsewhere === 1 ? '1 note is' : `${notesElsewhere} notes are`;
  return [`Voice ${voice} is read; ${notes} in other voices or on other staves.`];
}

function barLengthRemark(bar: PrintedBar, bars: readonly PrintedBar[]): string[] {
  const { nominalQuarters, lengthQuarters, number } = bar;
  if (nominalQuarters === null || Math.abs(lengthQuarters - nominalQuarters) < FULL_BAR_TOLERANCE) return [];
  const found = `it holds ${quarters(lengthQuarters)}, its time signature asks for ${quarters(nominalQuarters)}`;
  if (lengthQuarters > nominalQuarters) return [`Bar ${number} is too long: ${found}.`];
  return mayBeShort(bar, bars) ? [] : [`Bar ${number} is too short: ${found}.`];
}

/** Pick-up and last bars, bars of irregular length on purpose, and the two parts of a bar that a repeat sign splits. */
function mayBeShort(bar: PrintedBar, bars: readonly PrintedBar[]): boolean {
  const [before, after] = [bars[bar.index - 1], bars[bar.index + 1]];
  if (bar.implicit || before === undefined || after === undefined) return true;
  if (bar.backwardRepeatTimes > 0 || bar.fine || bar.daCapo || bar.dalSegno !== null || bar.endingStop) return true;
  if (bar.forwardRepeat || bar.endingStart !== null || after.implicit) return true;
  const nominal = bar.nominalQuarters ?? 0;
  return [before, after].some(
    (other) => Math.abs(other.lengthQuarters + bar.lengthQuarters - nominal) < FULL_BAR_TOLERANCE,
  );
}

function quarters(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return `${rounded} ${rounded === 1 ? 'quarter' : 'quarters'}`;
}

function slurRemarks(bars: readonly PrintedBar[], line: Line): string[] {
  const unclosed = new Set(line.unclosedSlurs.map((note) => note.id));
  return bars.flatMap((bar, i) =>
    (line.bars[i] ?? [])
      .filter(({ printed }) => unclosed.has(printed.id))
      .map(() => `Bar ${bar.number}: a slur begins and has no end.`),
  );
}

/** Signs that are missing in a file that prints signs elsewhere, signs that say another pitch, and microtones. */
function signRemarks(bars: readonly PrintedBar[], line: Line): string[] {
  const printsSigns = line.bars.some((notes) => notes.some(({ printed }) => printed.accidental !== null));
  return bars.flatMap((bar, i) =>
    (line.bars[i] ?? []).flatMap((note) =>
      signRemark(note, printsSigns).map((remark) => `Bar ${bar.number}: ${remark}`),
    ),
  );
}

function signRemark({ printed, reading }: LineNote, printsSigns: boolean): string[] {
  const { pitch, accidental } = printed;
  if (pitch === null) return [];
  const name = `${pitch.step}${pitch.octave}`;
  if (!Number.isInteger(pitch.alter)) return [`the microtone on ${name} is read as the nearest semitone.`];
  if (printsSigns && reading?.signMissing) return [`${name} is meant with a ${reading.sign} sign that is not printed.`];
  const bySign = accidental === null ? undefined : alterOfSign(accidental);
  if (bySign === undefined || bySign === pitch.alter) return [];
  return [`the sign at ${name} says ${accidental}, the file means another pitch; the pitch counts.`];
}

import { alterOfSign } from './pitch/accidentals.js';
import type { ChosenVoice } from './printed/choose-voice.js';
import type { Line, LineNote } from './printed/read-line.js';
import type { PrintedBar } from './printed/types.js';
import type { Remark } from './remark-table.js';

/** Rounded durations add up to a bar within this, in quarters. */
const FULL_BAR_TOLERANCE = 0.05;

/**
 * What a copyist would point out in the bars and notes themselves.
 *
 * @param bars bars as printed
 * @param line the player's line
 * @param chosen voice and staff that are read
 * @returns remarks in the order of the bars, those of one kind together
 *
 * Source: common practice.
 */
export function printedRemarks(bars: readonly PrintedBar[], line: Line, chosen: ChosenVoice): Remark[] {
  return [
    ...voiceRemarks(chosen),
    ...bars.flatMap((bar) => bar.remarks.map((code) => ({ code, facts: { bar: bar.number } }))),
    ...bars.flatMap((bar) => barLengthRemark(bar, bars)),
    ...slurRemarks(bars, line),
    ...signRemarks(bars, line),
  ];
}

function voiceRemarks({ notesElsewhere: notes, voice }: ChosenVoice): Remark[] {
  return notes === 0 ? [] : [{ code: 'other-voices', facts: { voice, notes } }];
}

function barLengthRemark(bar: PrintedBar, bars: readonly PrintedBar[]): Remark[] {
  const { nominalQuarters, lengthQuarters, number } = bar;
  if (nominalQuarters === null || Math.abs(lengthQuarters - nominalQuarters) < FULL_BAR_TOLERANCE) return [];
  const facts = { bar: number, quarters: thousandths(lengthQuarters), askedQuarters: thousandths(nominalQuarters) };
  if (lengthQuarters > nominalQuarters) return [{ code: 'bar-too-long', facts }];
  return mayBeShort(bar, bars) ? [] : [{ code: 'bar-too-short', facts }];
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

const thousandths = (value: number): number => Math.round(value * 1000) / 1000;

function slurRemarks(bars: readonly PrintedBar[], line: Line): Remark[] {
  const unclosed = new Set(line.unclosedSlurs.map((note) => note.id));
  return bars.flatMap((bar, i) =>
    (line.bars[i] ?? [])
      .filter(({ printed }) => unclosed.has(printed.id))
      .map((): Remark => ({ code: 'slur-without-end', facts: { bar: bar.number } })),
  );
}

/** Signs that are missing in a file that prints signs elsewhere, signs that say another pitch, and microtones. */
function signRemarks(bars: readonly PrintedBar[], line: Line): Remark[] {
  const printsSigns = line.bars.some((notes) => notes.some(({ printed }) => printed.accidental !== null));
  return bars.flatMap((bar, i) =>
    (line.bars[i] ?? []).flatMap((note) => signRemark(bar.number, note, printsSigns) ?? []),
  );
}

function signRemark(bar: string, { printed, reading }: LineNote, printsSigns: boolean): Remark | null {
  const { pitch, accidental } = printed;
  if (pitch === null) return null;
  const note = { bar, step: pitch.step, octave: pitch.octave };
  if (!Number.isInteger(pitch.alter)) return { code: 'microtone', facts: note };
  if (printsSigns && reading?.signMissing) {
    return { code: 'sign-missing', facts: { ...note, sign: reading.sign ?? 'other' } };
  }
  if (accidental === null) return null;
  const bySign = alterOfSign(accidental);
  if (bySign === undefined || bySign === pitch.alter) return null;
  return { code: 'sign-differs', facts: { ...note, sign: accidental } };
}

import type { JudgeInput } from './observed/judge-input.js';
import type { PlayedBars } from './types.js';

/** Which notes of the part a take leaves out in whole stretches, and which bars are left. */
export interface WhatWasPlayed {
  /** indexes of the notes that were passed over or not come to; a single note that was not heard is not among them */
  readonly notPlayed: ReadonlySet<number>;
  readonly bars: PlayedBars;
}

/**
 * @param input one take of this part
 * @returns what was played of the part, and how the take ends
 */
export function whatWasPlayed(input: JudgeInput): WhatWasPlayed {
  const notPlayed = notesNotPlayed(input);
  const { part, alignment, measurements } = input;
  const played = barsPlayed(input, notPlayed);
  const misses = notPlayed.has(part.notes.length - 1);
  const { breaksOff, endsInSound } = measurements.recording;
  return {
    notPlayed,
    bars: {
      played: played.filter(Boolean).length,
      of: played.length,
      stretches: stretchesOf(input, played),
      restarts: alignment.restarts.length,
      ending: !misses ? 'whole' : breaksOff || endsInSound ? 'cut-off' : 'broken-off',
    },
  };
}

/**
 * Every run of notes left out that holds what the alignment calls a skip; a grace note that was not heard does not end it.
 * What an attempt that was given up left out was not passed over: it was played again.
 */
function notesNotPlayed({ part, alignment }: JudgeInput): Set<number> {
  const { notes, skips, restarts } = alignment;
  const plain = skips.filter((s) => !restarts.some((r) => r.resumedAtIndex === s.toIndex + 1));
  const isOut = (index: number): boolean => {
    const note = notes[index];
    return note?.status === 'left-out' || (note?.status === 'unclear' && part.notes[index]!.grace);
  };
  const out = new Set<number>();
  for (const { fromIndex, toIndex } of plain) {
    let [from, to] = [fromIndex, toIndex];
    while (isOut(from - 1)) from--;
    while (isOut(to + 1)) to++;
    for (let index = from; index <= to; index++) out.add(index);
  }
  return out;
}

/** One a performed bar; a bar without notes goes with the one before it. */
function barsPlayed({ part }: JudgeInput, notPlayed: ReadonlySet<number>): boolean[] {
  let before = !notPlayed.has(0);
  return part.bars.map(({ barIndex, pass }) => {
    const notes = part.notes.filter((n) => n.barIndex === barIndex && n.pass === pass && !n.grace);
    if (notes.length > 0) before = notes.some(({ index }) => !notPlayed.has(index));
    return before;
  });
}

function stretchesOf({ part }: JudgeInput, played: readonly boolean[]): PlayedBars['stretches'] {
  const stretches: { bar: string; toBar: string; pass: number }[] = [];
  for (const [i, { bar, pass }] of part.bars.entries()) {
    if (played[i] !== true) continue;
    const open = stretches.at(-1);
    // a stretch ends where bars are left out, and where the part goes back
    if (open !== undefined && played[i - 1] === true && open.pass === pass) open.toBar = bar;
    else stretches.push({ bar, toBar: bar, pass });
  }
  return stretches;
}

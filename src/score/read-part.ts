import { InputError, printable } from '../base/index.js';
import { checkPlayable } from './performed/check-playable.js';
import { dynamicsOf } from './performed/dynamics.js';
import { hairpinsOf } from './performed/hairpins.js';
import { type PlayedBar, performedBars } from './performed/performed-bars.js';
import { marksOfLine, performedMarks } from './performed/performed-marks.js';
import { performedNotes } from './performed/performed-notes.js';
import { routeOf } from './performed/route.js';
import { performedTempo } from './performed/tempos.js';
import { chooseVoice } from './printed/choose-voice.js';
import { readBars } from './printed/read-bars.js';
import { readLine } from './printed/read-line.js';
import { assumedStart, tempoPlan } from './printed/tempo-plan.js';
import type { PrintedBar, PrintedMark } from './printed/types.js';
import type { Remark } from './remark-table.js';
import { printedRemarks } from './remarks.js';
import { choosePart } from './source/choose-part.js';
import { documentIn } from './source/document-in.js';
import { childNamed, childrenNamed, childText, type XmlElement } from './source/xml-element.js';
import type { Part } from './types.js';

/** Letters of a title that are kept: some lines of a page. */
const LONGEST_TITLE = 200;

/** Which line of a score to read. */
export interface ReadPartOptions {
  /** id, name or 1-based number of the part; default: the first part with notes */
  readonly part?: string;
  /** voice as the file numbers it; default: the one with the most notes on the first staff */
  readonly voice?: string;
}

/**
 * Reads a MusicXML part and unfolds it to what a player would sound.
 *
 * @param bytes whole file: MusicXML partwise or timewise, plain (UTF-8, UTF-16) or compressed
 * @param options which part and voice
 * @returns the part as performed
 * @throws InputError `empty-file`, `not-musicxml`, `score-refused`, `score-without-notes`, `bad-option`
 *
 * Source: MusicXML 4.0 (W3C Community Group final report, 2021).
 */
export function readPart(bytes: Uint8Array, options: ReadPartOptions = {}): Part {
  const root = documentIn(bytes);
  const source = choosePart(root, options.part);
  const concertScore = childNamed(childNamed(root, 'defaults') ?? root, 'concert-score') !== undefined;
  const bars = readBars(source.measures, concertScore);
  const chosen = chooseVoice(bars, options.voice);
  const line = readLine(bars, chosen);
  const marks = marksOfLine(bars, line.bars, chosen);
  const route = routeOf(bars);
  const played = performedBars(bars, route.steps);
  const notes = performedNotes(played, line.bars);
  if (notes.length === 0) throw new InputError('part-without-notes');
  checkPlayable({ bars: played.map((bar) => bar.performed), notes: notes.map(({ note }) => note) });
  const performed = performedMarks(played, marks);
  const { hairpins, remarks: hairpinRemarks } = hairpinsOf(marks.flat(), performed, played, notes);
  const { dynamics, dynamicEvents, remarks: dynamicRemarks } = dynamicsOf(marks, performed, hairpins, played, notes);
  const { remarks: tempoRemarks, ...tempo } = tempoOf(marks, bars, played);
  const remarks = [printedRemarks(bars, line, chosen), route.remarks, hairpinRemarks, dynamicRemarks, tempoRemarks];
  return {
    title: titleOf(root),
    partName: source.name,
    transposeSemitones: line.transposeSemitones,
    printedBars: bars.length,
    bars: played.map((bar) => bar.performed),
    notes: notes.map(({ note }) => note),
    dynamics,
    dynamicEvents,
    hairpins,
    tempos: tempo.tempos,
    tempoBends: tempo.tempoBends,
    remarks: eachOnce(remarks.flat()),
  };
}

function tempoOf(
  marks: readonly (readonly PrintedMark[])[],
  bars: readonly PrintedBar[],
  played: readonly PlayedBar[],
): Pick<Part, 'tempos' | 'tempoBends' | 'remarks'> {
  const numbers = bars.map((bar) => bar.number);
  const plan = tempoPlan(marks, numbers);
  const { tempos, tempoBends } = performedTempo(plan.events, played, assumedStart(marks));
  const start = tempos[0];
  const assumed: Remark[] = [{ code: 'tempo-assumed', facts: { quarterBpm: start?.quarterBpm ?? 0 } }];
  return { tempos, tempoBends, remarks: start?.printed ? plan.remarks : [...plan.remarks, ...assumed] };
}

/** A repeated bar is remarked on once. */
function eachOnce(remarks: readonly Remark[]): Remark[] {
  return [...new Map(remarks.map((remark) => [JSON.stringify(remark), remark])).values()];
}

/** Work and movement title, else the words printed as title. */
function titleOf(root: XmlElement): string {
  const work = childText(childNamed(root, 'work') ?? root, 'work-title');
  const movement = childText(root, 'movement-title');
  const titles = [work, movement].filter((title, i, all) => title !== '' && all.indexOf(title) === i);
  const credit = childrenNamed(root, 'credit').find((group) => childText(group, 'credit-type') === 'title');
  const printed = credit === undefined ? '' : childText(credit, 'credit-words');
  return printable((titles.join(': ') || printed).replace(/\s+/g, ' ').slice(0, LONGEST_TITLE)).trim();
}

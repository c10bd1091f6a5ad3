import type { FindingKind } from '../../../judge/index.js';
import { accentMarks } from './accent.js';
import { airDashes, crackMarks, sinkingArrow, waveMarks, wedgeMarks } from './air.js';
import { pitchArrows, timeArrows } from './arrows.js';
import { commaMarks, slurBreak } from './breath-marks.js';
import { caretMarks, crossMarks } from './carets.js';
import { groupBracket } from './group-bracket.js';
import { lengthBars } from './length-bars.js';
import { levelStrokes } from './level-strokes.js';
import type { DrawMarks } from './mark-place.js';
import { restartArrow, skipBracket } from './passage.js';
import { ringMarks } from './rings.js';
import { playedTempo, tempoArrow } from './tempo-marks.js';
import { playedWedge } from './wedge.js';

const NONE: DrawMarks = () => [];

const FAMILIES: Record<FindingKind, DrawMarks> = {
  accidental: ringMarks,
  'wrong-note': ringMarks,
  'missed-note': caretMarks,
  'added-note': crossMarks,
  'skipped-bars': skipBracket,
  restart: restartArrow,
  hesitation: timeArrows,
  'late-entry': timeArrows,
  'early-entry': timeArrows,
  'uneven-group': groupBracket,
  rushing: tempoArrow,
  dragging: tempoArrow,
  'off-tempo': playedTempo,
  'weak-contrast': levelStrokes,
  'reversed-contrast': levelStrokes,
  'weak-hairpin': playedWedge,
  'reversed-hairpin': playedWedge,
  'fermata-long': lengthBars,
  'fermata-short': lengthBars,
  'slur-broken': slurBreak,
  'staccato-long': lengthBars,
  'accent-weak': accentMarks,
  'breath-unmarked': commaMarks,
  'breath-late': timeArrows,
  'breath-missed': commaMarks,
  'breath-short': commaMarks,
  'note-out-of-tune': pitchArrows,
  'tuning-off': NONE,
  'unsteady-note': waveMarks,
  'air-gives-way': sinkingArrow,
  'cracked-start': crackMarks,
  'speaks-late': airDashes,
  'hit-start': wedgeMarks,
  'went-well': NONE,
};

/**
 * @param kind of a finding
 * @returns what draws its pencil marks
 */
export function marksFor(kind: FindingKind): DrawMarks {
  return FAMILIES[kind];
}

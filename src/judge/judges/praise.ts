import { isMeasured, quantile } from '../../base/index.js';
import { tempoBeat } from '../../score/index.js';
import { type JudgeInput, placeOf } from '../observed/judge-input.js';
import type { Observation, Praise } from '../observed/observation.js';

const MOST_PRAISE = 3;
const CLEAR_CONTRAST_DB = 6;
const CLEAR_RISE_DB = 5;
const MOST_NOTES_RIGHT = 0.97;
const IN_TUNE_SHARE = 0.75;
const LEAST_TRAPS = 3;
const LEAST_BARS = 6;

/**
 * What went well, specific and measured, at most three things.
 *
 * @param input one take
 * @returns praise, the rarest first
 *
 * Source: standards inTune, tempoSteady; common practice for the rest.
 */
export function judgePraise(input: JudgeInput): Observation[] {
  const grounds = [
    accidentals(input),
    contrast(input),
    hairpin(input),
    steadyTempo(input),
    fermatas(input),
    intonation(input),
    notes(input),
  ];
  return grounds.filter((o) => o !== null).slice(0, MOST_PRAISE);
}

/** Praise at a note, or, without one, for the take as a whole: then it has a bar, where the take begins, but no beat. */
function praise(
  input: JudgeInput,
  index: number | null,
  criterion: Observation['criterion'],
  about: Praise,
): Observation {
  const first = input.part.notes[0]!;
  const place = index === null ? { bar: first.bar, pass: first.pass } : placeOf(input, input.part.notes[index]!);
  return { kind: 'went-well', criterion, weight: 'well', size: 1, ...place, facts: { about } };
}

function accidentals(input: JudgeInput): Observation | null {
  const traps = input.part.notes.filter((n) => n.misreadings.some((m) => m.kind !== 'key-signature-forgotten'));
  const right = traps.every((n) => input.alignment.notes[n.index]!.status === 'as-written');
  if (traps.length < LEAST_TRAPS || !right) return null;
  return praise(input, null, 'notes', { what: 'accidentals', count: traps.length });
}

function contrast(input: JudgeInput): Observation | null {
  const { contrasts, recording } = input.measurements;
  if (recording.levelRiding) return null;
  const clear = contrasts
    .filter((c) => isMeasured(c.differenceDb) && rightWay(c.from, c.to, c.differenceDb))
    .sort((a, b) => Math.abs(b.differenceDb as number) - Math.abs(a.differenceDb as number))[0];
  if (clear === undefined || Math.abs(clear.differenceDb as number) < CLEAR_CONTRAST_DB) return null;
  const db = Math.abs(clear.differenceDb as number);
  return praise(input, clear.index, 'dynamics', { what: 'contrast', from: clear.from, to: clear.to, db });
}

function rightWay(from: string, to: string, differenceDb: number): boolean {
  const softer = (mark: string) => mark.includes('p');
  return (softer(from) && !softer(to) && differenceDb > 0) || (!softer(from) && softer(to) && differenceDb < 0);
}

function hairpin(input: JudgeInput): Observation | null {
  const { hairpins, recording } = input.measurements;
  if (recording.levelRiding) return null;
  const towards = (h: (typeof hairpins)[number]) =>
    isMeasured(h.riseDb) ? h.riseDb * (h.kind === 'crescendo' ? 1 : -1) : -1;
  const best = [...hairpins].sort((a, b) => towards(b) - towards(a))[0];
  if (best === undefined || towards(best) < CLEAR_RISE_DB) return null;
  return praise(input, best.index, 'dynamics', { what: 'hairpin', kind: best.kind, db: towards(best) });
}

function steadyTempo(input: JudgeInput): Observation | null {
  const { tempo } = input.measurements;
  if (!isMeasured(tempo) || tempo.bars.length < LEAST_BARS || input.alignment.restarts.length > 0) return null;
  const off = tempo.bars.map((b) => Math.abs(b.quarterBpm / tempo.playedQuarterBpm - 1));
  const usual = quantile(off, 0.9);
  if (usual > input.standards.tempoSteady.value) return null;
  return praise(input, null, 'tempo', {
    what: 'steady-tempo',
    quarterBpm: tempo.playedQuarterBpm,
    beat: tempoBeat(input.part),
    percent: 100 * usual,
  });
}

function fermatas(input: JudgeInput): Observation | null {
  const { fermataLeast, fermataMost } = input.standards;
  const ratios = input.measurements.fermatas.map((f) => f.ratio).filter(isMeasured<number>);
  if (ratios.length === 0 || !ratios.every((r) => r >= fermataLeast.value && r <= fermataMost.value)) return null;
  return praise(input, ratios.length === 1 ? input.measurements.fermatas[0]!.index : null, 'rhythm', {
    what: 'fermatas',
    count: ratios.length,
  });
}

function intonation(input: JudgeInput): Observation | null {
  const cents = input.measurements.notes.map((n) => n.centsFromOwnTuning).filter(isMeasured<number>);
  const share = cents.filter((c) => Math.abs(c) <= input.standards.inTune.value).length / Math.max(1, cents.length);
  if (cents.length < LEAST_BARS || share < IN_TUNE_SHARE) return null;
  return praise(input, null, 'intonation', { what: 'intonation', share, cents: input.standards.inTune.value });
}

function notes(input: JudgeInput): Observation | null {
  const played = input.alignment.notes.filter((n) => input.part.notes[n.index]!.grace === false);
  const right = played.filter((n) => n.status === 'as-written').length;
  if (right / Math.max(1, played.length) < MOST_NOTES_RIGHT) return null;
  return praise(input, null, 'notes', { what: 'notes', right, of: played.length });
}

import type { TakeResult } from '../../result/index.js';
import type { TempoBeat } from '../../score/index.js';
import type { Words } from '../../words/index.js';

/**
 * @param words in the language of the take
 * @param result the take
 * @param beat what tempo is counted in
 * @returns what the curves show, in sentences
 */
export function captionsOf(words: Words, result: TakeResult, beat: TempoBeat): string[] {
  return [
    result.levels.length === 0 ? words.glance.loudnessAlone : words.glance.loudness,
    ...(result.recording.levelRiding ? [words.glance.levelRiding] : []),
    tempoCaption(words, result, beat),
  ];
}

function tempoCaption({ glance }: Words, { tempo }: TakeResult, beat: TempoBeat): string {
  if ('notMeasured' in tempo) return glance.noTempo(tempo.notMeasured);
  return tempo.markedQuarterBpm === null ? glance.tempoAlone(beat) : glance.tempo(beat);
}

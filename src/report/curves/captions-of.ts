import type { TakeResult } from '../../result/index.js';
import type { Words } from '../../words/index.js';

/**
 * @param words in the language of the take
 * @param result the take
 * @returns what the curves show, in sentences
 */
export function captionsOf(words: Words, result: TakeResult): string[] {
  return [
    result.levels.length === 0 ? words.glance.loudnessAlone : words.glance.loudness,
    ...(result.recording.levelRiding ? [words.glance.levelRiding] : []),
    tempoCaption(words, result),
  ];
}

function tempoCaption({ glance }: Words, { tempo }: TakeResult): string {
  if ('notMeasured' in tempo) return glance.noTempo(tempo.notMeasured);
  return tempo.markedQuarterBpm === null ? glance.tempoAlone : glance.tempo;
}

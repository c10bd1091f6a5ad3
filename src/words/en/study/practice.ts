import type { PracticeStep } from '../../../study/index.js';
import type { PracticeWords } from '../../shapes/study.js';
import { listed } from '../lists.js';
import { beatsIn, tempoIn } from '../tempo.js';

/** What the steps of practice are called. */
export const PRACTICE_TITLES: Readonly<Record<PracticeStep['kind'], string>> = {
  read: 'Read before you play',
  slow: 'Slow and slurred',
  tongued: 'The same, now tongued',
  dynamics: 'How loud, on one note',
  'under-tempo': 'Stay below the tempo',
  'up-to-tempo': 'Up to the tempo',
  'once-through': 'Once through',
};

/** The steps of practice. */
export const PRACTICE: PracticeWords = {
  read: ({ bars, more, rests }) => {
    const where =
      bars.length === 0
        ? 'Name the notes of each line aloud'
        : `Name the notes of ${barsToRead(bars, more)} aloud, each with its sharp or flat`;
    const clapped = rests ? ' of every bar with a rest in it' : ' once through';
    return `${where}. Then move as you would to play them, but without sound. Clap the rhythm${clapped}.`;
  },
  slow: ({ quarterBpm, beat }) =>
    `Metronome at ${tempoIn(quarterBpm, beat)}. Play everything slurred, two bars at a time, with a full, even sound. Go on when two bars are right three times in a row.`,
  tongued: ({ quarterBpm, beat, patternBar }) => {
    const pattern = patternBar === null ? '' : ` Take the pattern of bar ${patternBar} on one single note first.`;
    return `Back to ${beatsIn(quarterBpm, beat)}. Put in tongue, slurs and dots as written. The air goes on as if it were still slurred.${pattern}`;
  },
  dynamics: () =>
    'Play the line above on one easy note, bar by bar, before you play it on the notes. Make the softest and the loudest place really different.',
  'under-tempo': () =>
    'This time it is practised below its tempo. Choose the fastest speed at which everything stays easy, and keep it.',
  'up-to-tempo': ({ steps, beat }) =>
    `Raise the metronome in steps: ${listed(steps.map((bpm) => String(beatsIn(bpm, beat))))}. Go up only when a step is right three times in a row; when it fails, go back one step, not to the beginning.`,
  'once-through': () =>
    'Play it from beginning to end without stopping, whatever happens, and record it. Listen with the part in front of you and mark two places for next time.',
};

function barsToRead(bars: readonly string[], more: boolean): string {
  const word = bars.length === 1 ? 'bar' : 'bars';
  return `${word} ${more ? `${bars.join(', ')} and the others marked above` : listed(bars)}`;
}

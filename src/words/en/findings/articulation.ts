import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { hundredths, whole } = NUMBERS;

/** What is said of articulation. */
export const ARTICULATION = {
  'slur-broken': {
    headline: 'The slur is interrupted',
    text: (f) => `The slur breaks before this note: there is a gap of ${hundredths(f.milliseconds)} seconds.`,
    why: 'Under a slur the air goes on and the tongue stays away until the next group.',
    practice:
      'Keep the air moving through the change. Play the two notes slurred, slowly, ten times, without the tongue.',
    caption: 'Two short strokes show where the slur broke.',
  },
  'staccato-long': {
    headline: 'The staccato notes are long',
    text: (f) =>
      f.all
        ? `Most staccato notes sound for ${whole(f.percent)} percent of their time. It may be the room: listen whether the gaps are there.`
        : `This staccato note is held for ${whole(f.percent)} percent of its time${f.usual === null ? '' : `; your others take ${whole(f.usual)}`}.`,
    why: 'A dot asks for space before the next note; the space is part of the rhythm.',
    practice: 'Stop the note early and leave silence. Play four of them in a row on one pitch and listen to the gaps.',
    caption: 'The heavy bar is how long you held the note, the fine one its time until the next note.',
  },
  'accent-weak': {
    headline: 'The accent can hardly be heard',
    text: (f) =>
      f.falls
        ? 'This note should be loud only at its start. It stays nearly as loud as it began.'
        : `The accent does not stand out: ${f.db < 0 ? 'it is softer than the notes around it' : 'it is as loud as the notes around it'}.`,
    why: 'An accent shows the listener where the weight is.',
    practice: (f) =>
      f.falls
        ? 'Play the note twice: first only its start, then only its soft end. Then put the two together.'
        : 'Start the note with faster air and a clear tongue, then relax at once. Leave the notes around it as they are.',
    caption: 'The accent is drawn again over its note.',
  },
} satisfies Partial<FindingsWords>;

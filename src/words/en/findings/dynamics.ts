import { isHardlyAny, isJustUnder, SMALLEST_HEARD_DB } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { tenth, whole } = NUMBERS;
const GRADUAL = 'A gradual change uses all of its bars and arrives at its mark.';
const LEVELS = 'The two heavy lines are your sound before and after the change: higher is louder.';
const WEDGE = 'Under the printed wedge is yours: the wider it opens, the more the sound changed.';

/** A hairpin that is large enough and over too soon, or turned back. */
const COURSES: Readonly<Record<'early' | 'turned-back', (kind: 'crescendo' | 'diminuendo') => string>> = {
  early: (kind) =>
    kind === 'crescendo'
      ? 'The crescendo is over too soon: by its middle it has nearly all its strength. Listen whether it still grows.'
      : 'The diminuendo is over too soon: by its middle it is nearly as soft as at its end. Listen whether it still fades.',
  'turned-back': (kind) =>
    kind === 'crescendo'
      ? 'The crescendo grows, but gets softer again before its end. Listen whether it arrives.'
      : 'The diminuendo fades, but gets louder again before its end. Listen whether it arrives.',
};

/** What is said of dynamics. */
export const DYNAMICS = {
  'weak-contrast': {
    headline: 'Two dynamic marks are too much alike',
    text: (f) =>
      f.byRegister
        ? f.asked
          ? `From ${f.from} to ${f.to} the change comes from high and low notes by themselves. You add ${added(f.db)} to it.`
          : `From ${f.from} to ${f.to} the change comes from high and low notes by themselves. You add ${added(f.db)} to it; listeners need ${whole(f.least)}.`
        : f.asked
          ? `From ${f.from} to ${f.to} the sound changes too little: ${tooLittle(f.db, f.least)}. Your teacher asks for ${tenth(f.least)} or more.`
          : `From ${f.from} to ${f.to} the sound hardly changes: ${tooLittle(f.db, f.least)}. Listeners need at least ${whole(f.least)} to hear two levels.`,
    why: 'Marks that differ on the page have to differ for a listener at the back of the hall.',
    practice: (f) =>
      `Play one long note in ${f.from}, then in ${f.to}, and make the difference bigger than you think you need. Then play the place.`,
    caption: LEVELS,
  },
  'reversed-contrast': {
    headline: 'The softer mark came out louder',
    text: (f) => `At the change from ${f.from} to ${f.to} the sound goes the other way, by ${heard(f.db)}.`,
    why: 'Listeners follow the dynamics to hear where the music is going.',
    practice: (f) =>
      `Say the marks aloud as you come to them. Play the last bar of ${f.from} and the first of ${f.to} until the change is plain.`,
    caption: LEVELS,
  },
  'weak-hairpin': {
    headline: 'The hairpin changes too little',
    text: (f) =>
      f.course
        ? COURSES[f.course](f.kind)
        : f.byRegister
          ? f.asked
            ? `What you hear of the ${f.kind} comes from high and low notes by themselves. You add ${added(f.db)} to it.`
            : `What you hear of the ${f.kind} comes from high and low notes by themselves. You add ${added(f.db)} to it; listeners need ${whole(f.least)}.`
          : f.asked
            ? `The ${f.kind} is too small: ${tooLittle(f.db, f.least)} from first to last note. Your teacher asks for ${tenth(f.least)} or more.`
            : `The ${f.kind} hardly moves: ${tooLittle(f.db, f.least)} from first to last note. Listeners need at least ${whole(f.least)} to hear it.`,
    why: GRADUAL,
    practice: (f) =>
      f.course
        ? 'Mark the middle of the wedge in your part. Play to it with half the change, and keep the rest for the second half.'
        : f.kind === 'crescendo'
          ? 'Begin it softer than you think. Play it on one note first, growing a little on every beat, then as written.'
          : 'Begin it with a full sound. Play it on one note first, giving back a little on every beat, then as written.',
    caption: WEDGE,
  },
  'reversed-hairpin': {
    headline: 'The hairpin goes the other way',
    text: (f) =>
      `The ${f.kind} goes the other way: the sound gets ${f.kind === 'crescendo' ? 'softer' : 'louder'} by ${heard(f.db)}.`,
    why: GRADUAL,
    practice: 'Play it on one note first, following the wedge with your hand or your eyes, then as written.',
    caption: WEDGE,
  },
} satisfies Partial<FindingsWords>;

/** A size in decibels in words. */
function spoken(db: number): string {
  const size = tenth(Math.abs(db));
  return isHardlyAny(Math.abs(db)) ? 'less than one decibel' : `${size} ${size === '1' ? 'decibel' : 'decibels'}`;
}

/** A size beside the smallest that is heard. */
function heard(db: number): string {
  return Math.abs(db) < SMALLEST_HEARD_DB
    ? `${spoken(db)}, too little to hear`
    : `${spoken(db)}; listeners notice ${SMALLEST_HEARD_DB}`;
}

/** A size that falls short; one that would read as enough when rounded is said to be just under. */
function tooLittle(db: number, least: number): string {
  return isJustUnder(db, least) ? `just under ${tenth(least)} decibels` : spoken(db);
}

/** What a player adds to a change that the instrument makes by itself. */
function added(db: number): string {
  return isHardlyAny(db) ? 'nothing' : `only ${tenth(db)} decibels`;
}

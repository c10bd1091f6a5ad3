import type { MisreadingKind } from '../../score/index.js';
import type { Facts, Praise } from '../observation.js';
import { ENGLISH_SUMMARIES } from './english-summaries.js';
import type { FindingWords, JudgeWords, Words } from './words.js';

const whole = (value: number) => String(Math.round(value));
const tenth = (value: number) => String(Math.round(10 * value) / 10);
const direction = (cents: number) => (cents > 0 ? 'sharp' : 'flat');

const MISREADINGS: Readonly<Record<MisreadingKind, (f: Facts['accidental']) => Words>> = {
  'key-signature-forgotten': (f) => ({
    text: `You played ${f.played}. The key signature makes every ${f.letter} here ${article(f.written)}.`,
    practice: `Before you play, name every ${f.letter} in the line aloud, with its sign. Then play the bar slowly.`,
  }),
  'accidental-forgotten': (f) => ({
    text: `The sign right before this note was missed: it is ${article(f.written)}, you played ${f.played}.`,
    practice: 'Circle the sign. Play only the note before it and this note, five times, then the whole bar.',
  }),
  'dropped-within-bar': (f) => ({
    text: `The sign earlier in this bar still counts here. The note is ${article(f.written)}, you played ${f.played}.`,
    practice: 'A sign holds until the barline. Pencil it in again at this note, then play the bar slowly twice.',
  }),
  'carried-past-barline': (f) => ({
    text: `The sign from the bar before ended at the barline. Here it is ${article(f.written)} again, you played ${f.played}.`,
    practice: 'Play the last beat of the bar before and the first beat of this one, slowly, and say both note names.',
  }),
  'wrong-octave-applied': (f) => ({
    text: `The sign in this bar belongs to the ${f.letter} in the other octave only. This one is ${article(f.written)}, you played ${f.played}.`,
    practice: `Find both ${f.letter}s in the bar. Name each with its own sign, then play them one after the other.`,
  }),
};

const ENDS = 'Play the first two bars with the metronome, then at once the last two, and hear if they match it.';

const FINDINGS: FindingWords = {
  accidental: (f) => MISREADINGS[f.misreading](f),
  'wrong-note': (f) => ({
    text:
      f.octave === null
        ? `Here stands ${article(f.written)}; ${article(f.played)} sounded.`
        : `The ${f.written} sounded an octave ${f.octave} than written.`,
    practice:
      'Sing or name the notes of this bar first. Then play it at half speed until it is right three times in a row.',
  }),
  'missed-note': (f) => ({
    text: f.sure
      ? `The ${f.written} here was left out.`
      : `The ${f.written} here could not be heard. It may not have spoken, or it was very soft.`,
    practice: 'Play from two notes before to two notes after it, slowly, and listen that every note speaks.',
  }),
  'added-note': (f) => ({
    text:
      f.after === null
        ? `An extra ${f.played} sounded before the music begins.`
        : `An extra ${f.played} sounded after the ${f.after}.`,
    practice: 'Play this spot slowly and move all fingers at the same moment.',
  }),
  'skipped-bars': (f) => ({
    text: f.fileEnds
      ? 'The recording breaks off here. What follows cannot be judged.'
      : f.atEnd
        ? 'The music stops here: what follows was not played.'
        : `The music jumps ahead here, over what is written up to bar ${f.toBar}.`,
    practice: f.fileEnds
      ? 'Save the recording again, or record the take anew.'
      : 'Mark the place with a bracket. Start two bars earlier and play through it without stopping.',
  }),
  restart: (f) => ({
    text: f.whole
      ? 'You played to the last bar and then began again. What you played the second time is what counts in this report.'
      : `You stopped in bar ${f.stoppedAtBar} and began again here. What you played the second time is what counts in this report.`,
    practice: f.whole
      ? 'Record each time you play it as a take of its own. Then you can compare them.'
      : 'Practise going on after a slip: start two bars earlier and do not stop, whatever happens.',
  }),
  'weak-contrast': (f) => ({
    text: f.byRegister
      ? `From ${f.from} to ${f.to} the change comes from high and low notes by themselves. You add ${added(f.db)} to it.`
      : `From ${f.from} to ${f.to} the sound hardly changes: ${tooLittle(f.db, f.least)}. Listeners need at least ${whole(f.least)} to hear two levels.`,
    practice: `Play one long note in ${f.from}, then in ${f.to}, and make the difference bigger than you think you need. Then play the place.`,
  }),
  'reversed-contrast': (f) => ({
    text: `At the change from ${f.from} to ${f.to} the sound goes the other way, by ${spoken(f.db)}.`,
    practice: `Say the marks aloud as you come to them. Play the last bar of ${f.from} and the first of ${f.to} until the change is plain.`,
  }),
  'weak-hairpin': (f) => ({
    text: f.course
      ? COURSES[f.course](f.kind)
      : f.byRegister
        ? `What you hear of the ${f.kind} comes from high and low notes by themselves. You add ${added(f.db)} to it.`
        : `The ${f.kind} hardly moves: ${tooLittle(f.db, f.least)} from first to last note. It needs at least ${whole(f.least)}.`,
    practice: f.course
      ? 'Mark the middle of the wedge in your part. Play to it with half the change, and keep the rest for the second half.'
      : f.kind === 'crescendo'
        ? 'Begin it softer than you think. Play it on one note first, growing a little on every beat, then as written.'
        : 'Begin it with a full sound. Play it on one note first, giving back a little on every beat, then as written.',
  }),
  'reversed-hairpin': (f) => ({
    text: `The ${f.kind} goes the other way: the sound ${f.kind === 'crescendo' ? 'falls' : 'grows'} by ${spoken(f.db)}.`,
    practice: 'Play it on one note first, following the wedge with your hand or your eyes, then as written.',
  }),
  'fermata-long': (f) => ({
    text: `The fermata lasts ${tenth(f.ratio)} times its written length. About twice is usual; more than ${tenth(f.most)} times stops the music.`,
    practice: 'Count the written beats once more inside, then let go.',
  }),
  'fermata-short': (f) => ({
    text: `The fermata lasts only ${tenth(f.ratio)} times its written length. It may rest: at least ${tenth(f.least)} times.`,
    practice: 'Count the written beats, then wait about as long again before you go on.',
  }),
  'late-entry': (f) => ({
    text: `The note after the rest comes late, by ${hundredths(f.milliseconds)} of a second.`,
    practice: `Count the rest in small notes: say ${counting(f.restQuarters)} aloud through it, then play on the next one.`,
  }),
  'early-entry': (f) => ({
    text: `The note after the rest comes early, by ${hundredths(f.milliseconds)} of a second.`,
    practice: `Give the rest its full length: say ${counting(f.restQuarters)} aloud through it, then play.`,
  }),
  'uneven-group': (f) => ({
    text: `The ${f.notes} notes of this ${f.tuplet && f.notes === 3 ? 'triplet' : 'group'} are uneven: the ${ORDINALS[f.which] ?? 'last'} takes ${whole(100 * f.share)} percent of the time instead of ${whole(100 * f.written)}.`,
    practice:
      'Tap the beat and say the group on one syllable each. Play it on one note first, then as written, slurred, then tongued.',
  }),
  hesitation: (f) => ({
    text: `The music waits here for ${tenth(f.seconds)} seconds.`,
    practice: 'Look one bar ahead while you play. Start two bars before and keep the beat through this place.',
  }),
  rushing: (f) => ({
    text: f.throughout
      ? `The tempo gets faster from beginning to end, by about ${whole(f.percent)} percent.`
      : `The tempo runs ahead here, by about ${whole(f.percent)} percent.`,
    practice: f.throughout ? ENDS : 'Play these bars with the metronome on the weak beats only.',
  }),
  dragging: (f) => ({
    text: f.throughout
      ? `The tempo gets slower from beginning to end, by about ${whole(f.percent)} percent.`
      : `The tempo sinks here, by about ${whole(f.percent)} percent.`,
    practice: f.throughout
      ? ENDS
      : 'Find the hardest beat in these bars and practise it alone, then with the metronome.',
  }),
  'slur-broken': (f) => ({
    text: `The slur breaks before this note: there is a gap of ${hundredths(f.milliseconds)} of a second.`,
    practice:
      'Keep the air moving through the change. Play the two notes slurred, slowly, ten times, without the tongue.',
  }),
  'staccato-long': (f) => ({
    text: f.all
      ? `Most staccato notes sound for ${whole(f.percent)} percent of their time. It may be the room: listen whether the gaps are there.`
      : `This staccato note is held for ${whole(f.percent)} percent of its time${f.usual === null ? '' : `; your others take ${whole(f.usual)}`}.`,
    practice: 'Stop the note early and leave silence. Play four of them in a row on one pitch and listen to the gaps.',
  }),
  'accent-weak': (f) => ({
    text: f.falls
      ? 'This note should be loud only at its start. It stays nearly as loud as it began.'
      : `The accent does not stand out: ${f.db < 0 ? 'it is softer than the notes around it' : 'it is as loud as the notes around it'}.`,
    practice: f.falls
      ? 'Play the note twice: first only its start, then only its soft end. Then put the two together.'
      : 'Start the note with faster air and a clear tongue, then relax at once. Leave the notes around it as they are.',
  }),
  'breath-unmarked': (f) => ({
    text: f.inSlur
      ? 'There is a breath inside the slur after this note.'
      : 'There is a breath after this note where none is marked.',
    practice:
      'Take a full breath at the mark before, and play on to the next mark in one line. Rest when you feel dizzy.',
  }),
  'breath-late': (f) => ({
    text: `The breath here takes ${tenth(f.seconds)} seconds too long, so the next note comes late.`,
    practice: 'Shorten the note before the breath, not the beat after it. Breathe low and quick.',
  }),
  'tuning-off': (f) => ({
    text: `The whole take is ${whole(Math.abs(f.cents))} cents ${direction(f.cents)} of A = 440. Your notes agree with each other; the instrument stands ${direction(f.cents)}.`,
    practice: `Warm up, tune again, and ${f.cents > 0 ? 'pull out' : 'push in'} a little before you record.`,
  }),
  'note-out-of-tune': (f) => ({
    text: `The ${f.written} is ${whole(Math.abs(f.cents))} cents ${direction(f.cents)} of your own tuning${f.times > 1 ? `, and so it is ${f.times} times in this take` : ''}.`,
    practice: 'Hold this note against a drone or a tuner, then come to it from the note before and check again.',
  }),
  'off-tempo': (f) => ({
    text: `You played at about ${whole(f.played)} quarter notes a minute; ${whole(f.marked)} is marked.`,
    practice:
      f.played < f.marked
        ? 'If this was not planned, raise the metronome by four each day.'
        : 'Start the metronome two bars before you begin, and breathe with it.',
  }),
  'went-well': (f) => ({ text: PRAISE[f.about.what](f.about as never), practice: '' }),
};

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

type PraiseOf<W extends Praise['what']> = Extract<Praise, { what: W }>;

const PRAISE: { readonly [W in Praise['what']]: (p: PraiseOf<W>) => string } = {
  accidentals: (p) => `All ${p.count} notes with a tricky accidental were right.`,
  notes: (p) => `${p.right} of ${p.of} notes were as written.`,
  contrast: (p) => `The change from ${p.from} to ${p.to} is plain to hear: ${whole(p.db)} decibels.`,
  hairpin: (p) =>
    `This ${p.kind} really ${p.kind === 'crescendo' ? 'grows' : 'fades'}: ${whole(p.db)} decibels from first to last note.`,
  fermatas: (p) => FERMATAS[p.count] ?? `All ${p.count} fermatas have a good length.`,
  'steady-tempo': (p) =>
    `Your tempo is steady at ${whole(p.quarterBpm)} quarter notes a minute. Nearly every bar is within ${Math.max(1, Math.ceil(p.percent))} percent of it.`,
  intonation: (p) =>
    `You are well in tune with yourself: ${whole(100 * p.share)} of 100 notes lie within ${whole(p.cents)} cents.`,
};

const FERMATAS: Readonly<Record<number, string>> = {
  1: 'The fermata has a good length.',
  2: 'Both fermatas have a good length.',
};

function barList(bars: readonly string[]): string {
  return bars.length === 1 ? `bar ${bars[0]}` : `bars ${bars.slice(0, -1).join(', ')} and ${bars.at(-1)}`;
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];

function hundredths(milliseconds: number): string {
  return (Math.max(10, Math.round(milliseconds / 10) * 10) / 1000).toFixed(2);
}

/** Syllables that fill a rest with small values. Source: common practice. */
function counting(restQuarters: number): string {
  return restQuarters < 0.5 ? '“one-e-and-a”' : '“one and two and”';
}

/** A size in decibels in words. */
function spoken(db: number): string {
  const size = tenth(Math.abs(db));
  return Math.abs(db) < 0.5 ? 'less than one decibel' : `${size} ${size === '1' ? 'decibel' : 'decibels'}`;
}

/** A size that falls short; one that would read as enough when rounded is said to be just under. */
function tooLittle(db: number, least: number): string {
  return Number(tenth(db)) >= least ? `just under ${tenth(least)} decibels` : spoken(db);
}

/** What a player adds to a change that the instrument makes by itself. */
function added(db: number): string {
  return db < 0.5 ? 'nothing' : `only ${tenth(db)} decibels`;
}

function article(name: string): string {
  return /^[AEF]/.test(name) ? `an ${name}` : `a ${name}`;
}

/** Everything the judges say, in English. */
export const ENGLISH: JudgeWords = {
  findings: FINDINGS,
  summaries: ENGLISH_SUMMARIES,
  alsoIn: (bars) => (bars.length === 0 ? '' : ` The same happens in ${barList(bars)}.`),
  perhapsIn: (bars) => (bars.length === 0 ? '' : ` Listen to ${barList(bars)} as well.`),
};

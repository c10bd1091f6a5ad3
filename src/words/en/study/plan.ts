import type { ArticulationGroup, EntryPlan, FermataPlan, RestValue, TempoChange } from '../../../study/index.js';
import { beatInFigures } from '../../rules/beats.js';
import { say } from '../../say.js';
import type { StudyPlanWords } from '../../shapes/study.js';
import { listed } from '../lists.js';
import { NUMBERS } from '../numbers.js';
import { REMARKS_IN_WORDS } from '../remarks.js';
import { tempoIn } from '../tempo.js';
import { DEMAND_TITLES, demandInWords } from './demands.js';
import { signedName, signedNameWithOctave } from './places.js';
import { PRACTICE, PRACTICE_TITLES } from './practice.js';
import { trapInWords } from './traps.js';

const COUNTS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');
const count = (value: number): string => COUNTS[value] ?? String(value);
const tenth = (value: number): string => NUMBERS.number(value, 1);

const PLAYED: Readonly<Record<Exclude<ArticulationGroup['kind'], 'slurred'>, string>> = {
  tongued: 'tongued',
  staccato: 'short',
  staccatissimo: 'very short',
  tenuto: 'held',
  accent: 'accented',
  'strong-accent': 'strongly accented',
  'detached-legato': 'held but apart',
};

const RESTS: Readonly<Record<RestValue, string>> = {
  'thirty-second': 'a thirty-second',
  sixteenth: 'a sixteenth',
  'triplet-eighth': 'a triplet eighth',
  eighth: 'an eighth',
  'two-triplet-eighths': 'two triplet eighths',
  'dotted-eighth': 'a dotted eighth',
  quarter: 'a quarter',
  'dotted-quarter': 'a dotted quarter',
  half: 'a half',
  'dotted-half': 'a dotted half',
};

const COUNTING: Readonly<Record<EntryPlan['count'], string>> = {
  'bars-then-eighths': 'Count the bars on your fingers, the last one in eighths,',
  eighths: 'Count eighths through it',
  'triplet-eighths': 'Count triplet eighths through it',
  sixteenths: 'Count sixteenths through it',
  smallest: 'Count the smallest notes of the passage through it',
};

const ENTRIES: Readonly<Record<EntryPlan['entry']['how'], (beat: number) => string>> = {
  on: (beat) => `exactly on beat ${beat}`,
  half: (beat) => `on the “and” of beat ${beat}`,
  part: (beat) => `on beat ${beatInFigures(beat).text}`,
  after: (beat) => `after beat ${beat}`,
};

/** What the plan says. */
export const STUDY_PLAN: StudyPlanWords = {
  trap: trapInWords,
  articulation: (groups) =>
    groups.map((group) => (group.times === 1 ? played(group) : `${times(group.times)} ${played(group)}`)).join(', '),
  entry: ({ rest, count: how, entry }) =>
    `Rest of ${restName(rest)}. ${COUNTING[how]} and come in ${ENTRIES[entry.how](entry.beat)}.`,
  fermata,
  tempoChange,
  practiceTitle: ({ kind }) => PRACTICE_TITLES[kind],
  practice: (step) => PRACTICE[step.kind](step as never),
  demandTitle: ({ kind }) => DEMAND_TITLES[kind],
  demand: demandInWords,
  cautions: [
    'Rest as long as you play. Tired lips, fingers and breath learn nothing; two short times a day beat one long one.',
    'Stop when something hurts, and tell your teacher. Pain is no sign of good practice.',
    'If you get dizzy you are breathing too much: put the instrument down and breathe quietly until it has passed.',
    'Loud playing in a small room tires the ears. If they ring, stop for the day.',
  ],
  problem: (remark) => say(REMARKS_IN_WORDS, remark),
  pitches: (pitches) => listed(pitches.map(signedName)),
  pitchWithOctave: signedNameWithOctave,
};

function times(value: number): string {
  return value === 2 ? 'twice' : `${count(value)} times`;
}

function played({ kind, count: notes, accentOnFirst, dotOnLast }: ArticulationGroup): string {
  if (kind !== 'slurred') return `${count(notes)} ${PLAYED[kind]}`;
  const signs = [...(accentOnFirst ? ['accent on the first'] : []), ...(dotOnLast ? ['dot on the last'] : [])];
  return `${count(notes)} slurred${signs.length === 0 ? '' : ` (${signs.join(', ')})`}`;
}

function restName(rest: EntryPlan['rest']): string {
  if ('value' in rest) return RESTS[rest.value];
  if ('bars' in rest) return rest.bars === 1 ? 'a whole bar' : `${rest.bars} bars`;
  return `${rest.quarters} quarters`;
}

function fermata(plan: FermataPlan): string {
  const { writtenSeconds: written, suggestedSeconds, suggestedTimes, leastTimes, mostTimes, short, usual } = plan;
  const length = suggestedTimes === 2 ? 'twice' : `${NUMBERS.number(suggestedTimes, 2)} times`;
  const why = short
    ? 'The note is short, so keep the hold modest'
    : usual
      ? 'Count the written beats once more inside'
      : 'Go on counting inside while you hold it';
  return (
    `Written it lasts ${tenth(written)} s; hold it about ${tenth(suggestedSeconds)} s (${length} its length). ` +
    `${why}: never less than ${tenth(leastTimes * written)} s, never more than ${tenth(mostTimes * written)} s.`
  );
}

function tempoChange(change: TempoChange): string {
  if ('to' in change) return `from here ${tempoIn(change.to, change.beat)}`;
  const { bend, until } = change;
  if (until === null) return `getting ${bend}, to the end`;
  const { text, after } = beatInFigures(until.beat);
  return `getting ${bend}, until bar ${until.bar}, ${after ? 'after beat' : 'beat'} ${text}`;
}

import type { ArticulationGroup, EntryPlan, FermataPlan, RestValue, TempoChange } from '../../../study/index.js';
import { beatInFigures } from '../../rules/beats.js';
import { say } from '../../say.js';
import type { StudyPlanWords } from '../../shapes/study.js';
import { listed } from '../lists.js';
import { NUMBERS } from '../numbers.js';
import { REMARKS_IN_WORDS } from '../remarks.js';
import { tempoIn } from '../tempo.js';
import { DEMAND_TITLES, demandInWords } from './demands.js';
import { pitchName } from './places.js';
import { PRACTICE, PRACTICE_TITLES } from './practice.js';
import { trapInWords } from './traps.js';

const COUNTS = 'keine eine zwei drei vier fünf sechs sieben acht neun zehn elf zwölf'.split(' ');
const count = (value: number): string => COUNTS[value] ?? String(value);
const tenth = (value: number): string => NUMBERS.number(value, 1);

const PLAYED: Readonly<Record<Exclude<ArticulationGroup['kind'], 'slurred'>, string>> = {
  tongued: 'gestoßen',
  staccato: 'kurz',
  staccatissimo: 'sehr kurz',
  tenuto: 'breit',
  accent: 'mit Akzent',
  'strong-accent': 'mit starkem Akzent',
  'detached-legato': 'breit, aber getrennt',
};

const RESTS: Readonly<Record<RestValue, string>> = {
  'thirty-second': 'Zweiunddreißigstelpause',
  sixteenth: 'Sechzehntelpause',
  'triplet-eighth': 'Pause von einer Triolenachtel',
  eighth: 'Achtelpause',
  'two-triplet-eighths': 'Pause von zwei Triolenachteln',
  'dotted-eighth': 'Punktierte Achtelpause',
  quarter: 'Viertelpause',
  'dotted-quarter': 'Punktierte Viertelpause',
  half: 'Halbe Pause',
  'dotted-half': 'Punktierte halbe Pause',
};

const COUNTING: Readonly<Record<EntryPlan['count'], string>> = {
  'bars-then-eighths': 'Zähl die Takte an den Fingern ab, den letzten in Achteln,',
  eighths: 'Zähl darin Achtel',
  'triplet-eighths': 'Zähl darin Triolenachtel',
  sixteenths: 'Zähl darin Sechzehntel',
  smallest: 'Zähl darin die kleinsten Noten der Stelle',
};

const ENTRIES: Readonly<Record<EntryPlan['entry']['how'], (beat: number) => string>> = {
  on: (beat) => `genau auf Schlag ${beat}`,
  half: (beat) => `auf dem „und“ von Schlag ${beat}`,
  part: (beat) => `auf Schlag ${beatInFigures(beat).text}`,
  after: (beat) => `nach Schlag ${beat}`,
};

/** What the plan says. */
export const STUDY_PLAN: StudyPlanWords = {
  trap: trapInWords,
  articulation: (groups) =>
    groups.map((group) => (group.times === 1 ? played(group) : `${times(group.times)} ${played(group)}`)).join(', '),
  entry: ({ rest, count: how, entry }) =>
    `${restName(rest)}. ${COUNTING[how]} und setz ${ENTRIES[entry.how](entry.beat)} ein.`,
  fermata,
  tempoChange,
  practiceTitle: ({ kind }) => PRACTICE_TITLES[kind],
  practice: (step) => PRACTICE[step.kind](step as never),
  demandTitle: ({ kind }) => DEMAND_TITLES[kind],
  demand: demandInWords,
  cautions: [
    'Mach so lange Pause, wie du spielst. Müde Lippen, Finger und Lungen lernen nichts; zweimal kurz am Tag ist besser als einmal lang.',
    'Hör auf, wenn dir etwas weh tut, und sag es deiner Lehrerin oder deinem Lehrer. Schmerz ist kein Zeichen für gutes Üben.',
    'Wenn dir schwindlig wird, atmest du zu viel: Leg das Instrument weg und atme ruhig, bis es vorbei ist.',
    'Lautes Spiel in einem kleinen Raum macht die Ohren müde. Wenn sie klingen, ist für heute Schluss.',
  ],
  problem: (remark) => say(REMARKS_IN_WORDS, remark),
  pitches: (pitches) => listed(pitches.map((pitch) => pitchName(pitch))),
  pitchWithOctave: (pitch) => pitchName(pitch, pitch.octave),
};

function times(value: number): string {
  return value <= 12 ? `${count(value)}mal` : `${value}-mal`;
}

function played({ kind, count: notes, accentOnFirst, dotOnLast }: ArticulationGroup): string {
  if (kind !== 'slurred') return `${count(notes)} ${PLAYED[kind]}`;
  const signs = [...(accentOnFirst ? ['Akzent auf der ersten'] : []), ...(dotOnLast ? ['Punkt auf der letzten'] : [])];
  return `${count(notes)} gebunden${signs.length === 0 ? '' : ` (${signs.join(', ')})`}`;
}

function restName(rest: EntryPlan['rest']): string {
  if ('value' in rest) return RESTS[rest.value];
  if ('bars' in rest) return rest.bars === 1 ? 'Ein ganzer Takt Pause' : `${rest.bars} Takte Pause`;
  return `Pause von ${NUMBERS.number(rest.quarters, 2)} Vierteln`;
}

function fermata(plan: FermataPlan): string {
  const { writtenSeconds: written, suggestedSeconds, suggestedTimes, leastTimes, mostTimes, short, usual } = plan;
  const length = suggestedTimes === 2 ? 'doppelt so lang' : `${NUMBERS.number(suggestedTimes, 2)}-mal so lang`;
  const why = short
    ? 'Die Note ist kurz, also halte sie mit Maß'
    : usual
      ? 'Zähl die Schläge im Stillen noch einmal mit'
      : 'Zähl beim Halten im Stillen weiter';
  return (
    `Notiert dauert sie ${tenth(written)} s; halte sie etwa ${tenth(suggestedSeconds)} s (${length}). ` +
    `${why}: nie kürzer als ${tenth(leastTimes * written)} s, nie länger als ${tenth(mostTimes * written)} s.`
  );
}

function tempoChange(change: TempoChange): string {
  if ('to' in change) return `ab hier ${tempoIn(change.to, change.beat)}`;
  const how = change.bend === 'slower' ? 'wird langsamer' : 'wird schneller';
  if (change.until === null) return `${how}, bis zum Ende`;
  const { text, after } = beatInFigures(change.until.beat);
  return `${how}, bis Takt ${change.until.bar}, ${after ? 'nach Schlag' : 'Schlag'} ${text}`;
}

import type { StandingSentences, TroubleKind, TroubleWords } from '../shapes/weeks-standing.js';
import { barsIn } from './bars-in.js';
import { listed } from './lists.js';

/** How kinds of findings are spoken of in passing. */
export const TROUBLES: Readonly<Record<TroubleKind, TroubleWords>> = {
  accidental: {
    topic: ['das Vorzeichen', 'die Vorzeichen'],
    aim: 'der richtige Ton beim Vorzeichen, dreimal hintereinander',
  },
  'wrong-note': {
    topic: ['die falsche Note', 'die falschen Noten'],
    aim: 'die Noten, wie sie dastehen, dreimal hintereinander',
  },
  'missed-note': { topic: ['die fehlende Note', 'die fehlenden Noten'], aim: 'jeder Ton kommt' },
  'added-note': { topic: ['die Note zu viel', 'die Noten zu viel'], aim: 'nur die Noten, die dastehen' },
  'skipped-bars': {
    topic: ['die ausgelassenen Takte', 'die ausgelassenen Takte'],
    aim: 'alles spielen, nichts auslassen',
  },
  restart: { topic: ['das Anhalten', 'das Anhalten'], aim: 'weiterspielen, ohne anzuhalten' },
  hesitation: { topic: ['das Warten', 'das Warten'], aim: 'den Schlag weitergehen lassen, ohne zu warten' },
  'late-entry': {
    topic: ['der späte Einsatz', 'die späten Einsätze'],
    aim: 'die Pause zählen und pünktlich einsetzen',
  },
  'early-entry': {
    topic: ['der frühe Einsatz', 'die frühen Einsätze'],
    aim: 'die Pause zu Ende zählen, dann einsetzen',
  },
  'uneven-group': {
    topic: ['der ungleiche Schlag', 'die ungleichen Schläge'],
    aim: 'alle Noten des Schlags gleich lang',
  },
  rushing: { topic: ['das eilende Tempo', 'das eilende Tempo'], aim: 'das Tempo mit dem Metronom halten' },
  dragging: {
    topic: ['das schleppende Tempo', 'das schleppende Tempo'],
    aim: 'das Tempo mit dem Metronom in Gang halten',
  },
  'off-tempo': { topic: ['das Tempo', 'das Tempo'], aim: 'im vorgegebenen Tempo spielen' },
  'weak-contrast': {
    topic: ['laut und leise zu ähnlich', 'laut und leise zu ähnlich'],
    aim: 'laut und leise deutlich verschieden',
  },
  'reversed-contrast': {
    topic: ['leise lauter als laut', 'leise lauter als laut'],
    aim: 'das leise Zeichen leiser als das laute',
  },
  'weak-hairpin': { topic: ['die flache Gabel', 'die flachen Gabeln'], aim: 'eine Gabel, die alle hören' },
  'reversed-hairpin': {
    topic: ['die verkehrte Gabel', 'die verkehrten Gabeln'],
    aim: 'die Gabel in die Richtung, in der sie dasteht',
  },
  'fermata-long': { topic: ['die lange Fermate', 'die langen Fermaten'], aim: 'die Fermate früher loslassen' },
  'fermata-short': { topic: ['die kurze Fermate', 'die kurzen Fermaten'], aim: 'die Fermate länger ruhen lassen' },
  'slur-broken': {
    topic: ['der unterbrochene Bogen', 'die unterbrochenen Bögen'],
    aim: 'die Luft durch den Bogen strömen lassen',
  },
  'staccato-long': { topic: ['das lange Staccato', 'das lange Staccato'], aim: 'kurze Noten mit Stille danach' },
  'accent-weak': { topic: ['der schwache Akzent', 'die schwachen Akzente'], aim: 'ein Akzent, der sich abhebt' },
  'breath-unmarked': {
    topic: ['das Atmen ohne Zeichen', 'das Atmen ohne Zeichen'],
    aim: 'bis zum Atemzeichen durchspielen',
  },
  'breath-late': {
    topic: ['das langsame Atmen', 'das langsame Atmen'],
    aim: 'schnell atmen, die nächste Note pünktlich',
  },
  'breath-missed': { topic: ['das fehlende Atmen', 'das fehlende Atmen'], aim: 'dort atmen, wo es verlangt ist' },
  'breath-short': {
    topic: ['das kurze Atmen', 'das kurze Atmen'],
    aim: 'voll einatmen, mit der Zeit, die es braucht',
  },
  'note-out-of-tune': { topic: ['der unreine Ton', 'die unreinen Töne'], aim: 'den Ton zu seinen Nachbarn stimmen' },
  'unsteady-note': {
    topic: ['der lange Ton, der zittert', 'die langen Töne, die zittern'],
    aim: 'der lange Ton auf ruhiger Luft',
  },
  'air-gives-way': {
    topic: ['die Luft, die nachlässt', 'die Luft, die nachlässt'],
    aim: 'Luft bis zum Ende des Tons vor dem Atmen',
  },
  'cracked-start': { topic: ['der Ton, der kippt', 'die Töne, die kippen'], aim: 'ein sauberer Anfang' },
  'speaks-late': {
    topic: ['der Ton, der spät anspricht', 'die Töne, die spät ansprechen'],
    aim: 'ein Ton, der sofort anspricht',
  },
  'hit-start': {
    topic: ['der harte Anstoß', 'die harten Anstöße'],
    aim: 'eine leichte Zunge, und Luft durch den ganzen Ton',
  },
  'tuning-off': { topic: ['die Stimmung', 'die Stimmung'], aim: 'vor dem Spielen einstimmen' },
};

const all = (things: readonly string[]) => things.join('; ');

/** How a player stands. */
export const WEEKS_STANDING: StandingSentences = {
  topicIn: (topic, bars) => {
    if (bars.length === 0) return topic;
    return bars.length === 1 ? `${topic} in ${barsIn(bars)}` : `${topic} in den Takten ${listed(bars)}`;
  },
  firstDay: (topics) =>
    topics.length === 0 ? 'Die erste Aufnahme, nichts zu üben.' : `Die erste Aufnahme. Zu üben: ${all(topics)}.`,
  mended: (topics) => `Geschafft: ${all(topics)}.`,
  better: (names) => `Besser: ${all(names)}.`,
  nearlyThere: (topics) => `Fast geschafft: ${all(topics)}.`,
  stillOpen: (topics) => `Noch offen: ${all(topics)}.`,
  cameBack: (topics) => `Wieder da: ${all(topics)}.`,
  cameNew: (topics) => `Neu: ${all(topics)}.`,
  slippedBack: (names) => `Schlechter geworden: ${all(names)}.`,
  notHeard: (topics) => `Diesmal nicht zu beurteilen: ${all(topics)}.`,
  nothingOpen: 'Nichts ist offen.',
  noTake: 'Noch war keine Aufnahme zu beurteilen.',
  goalInBars: (bars, aim) => `${barsIn(bars)}: ${aim}.`,
  goalThroughout: (aim) => `${aim.charAt(0).toUpperCase()}${aim.slice(1)}.`,
  goalHearAgain: (bars) => `${barsIn(bars)} noch einmal aufnehmen.`,
  goalListen: (topic) => `Zusammen hinhören: ${topic}.`,
  goalKeep: 'Einmal ganz durchspielen, wie beim Vorspiel.',
};

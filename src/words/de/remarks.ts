import type { Sayings } from '../../base/index.js';
import type { REMARKS } from '../../score/index.js';
import { noteName } from './names.js';
import { NUMBERS } from './numbers.js';

/** Accidentals by their names in MusicXML. */
const SIGNS: Readonly<Record<string, string>> = {
  sharp: 'Kreuz',
  flat: 'Be',
  natural: 'Auflösungszeichen',
  'double-sharp': 'Doppelkreuz',
  'sharp-sharp': 'Doppelkreuz',
  'flat-flat': 'Doppel-Be',
  'triple-sharp': 'dreifaches Kreuz',
  'triple-flat': 'dreifaches Be',
  'quarter-sharp': 'Viertelton-Kreuz',
  'quarter-flat': 'Viertelton-Be',
  'three-quarters-sharp': 'Dreiviertelton-Kreuz',
  'three-quarters-flat': 'Dreiviertelton-Be',
  other: 'anderes Zeichen',
  'natural-sharp': 'Auflösungszeichen und Kreuz',
  'natural-flat': 'Auflösungszeichen und Be',
};

const signName = (sign: string): string => SIGNS[sign] ?? sign;
const quarters = (value: number): string => `${NUMBERS.exact(value)} Viertel`;

/** What a copyist would point out in a part, in German. */
export const REMARKS_IN_WORDS: Sayings<typeof REMARKS> = {
  'other-voices': ({ voice, notes }) =>
    `Gelesen wird Stimme ${voice}; ${notes === 1 ? '1 Note steht' : `${notes} Noten stehen`} in anderen Stimmen oder Systemen.`,
  'repeat-within-bar': ({ bar }) =>
    `Takt ${bar}: Ein Wiederholungszeichen steht mitten im Takt; es gilt, als stünde es am Ende.`,
  'bar-repeat': ({ bar }) =>
    `Takt ${bar}: Das Zeichen, das den Takt davor wiederholt, wird nicht ausgeführt; der Takt gilt als Pause.`,
  'concert-pitch': ({ bar }) =>
    `Takt ${bar}: Die Noten stehen klingend da; die eigene Stimme ist in einer anderen Tonart notiert.`,
  'bar-too-long': ({ bar, quarters: held, askedQuarters }) =>
    `Takt ${bar} ist zu lang: Er enthält ${quarters(held)}, die Taktart verlangt ${quarters(askedQuarters)}.`,
  'bar-too-short': ({ bar, quarters: held, askedQuarters }) =>
    `Takt ${bar} ist zu kurz: Er enthält ${quarters(held)}, die Taktart verlangt ${quarters(askedQuarters)}.`,
  'slur-without-end': ({ bar }) => `Takt ${bar}: Ein Bogen beginnt und hat kein Ende.`,
  microtone: ({ bar, step, octave }) =>
    `Takt ${bar}: Der Mikroton auf ${noteName(step, octave)} wird als nächster Halbton gelesen.`,
  'sign-missing': ({ bar, step, octave, sign }) =>
    `Takt ${bar}: Zu ${noteName(step, octave)} fehlt ein Zeichen im Druck, das gemeint ist (${signName(sign)}).`,
  'sign-differs': ({ bar, step, octave, sign }) =>
    `Takt ${bar}: Das Zeichen bei ${noteName(step, octave)} (${signName(sign)}) passt nicht zur Tonhöhe in der Datei; die Tonhöhe zählt.`,
  'no-coda': ({ bar }) => `Takt ${bar}: Es geht hier zu einer Coda, aber es gibt keine.`,
  'no-segno': ({ bar }) => `Takt ${bar}: Hier steht D. S., aber es gibt kein Segno.`,
  'endless-repeats': () =>
    'Die Wiederholungen verlangen mehr Takte, als irgendjemand spielt; der Rest ist weggelassen.',
  'wedge-without-end': ({ bar, kind }) => `Takt ${bar}: Die Gabel hat kein Ende (${kind}).`,
  'hairpin-without-note': ({ bar, kind }) =>
    `Takt ${bar}: Unter dieser Gabel beginnt keine Note, darum wird sie nicht gemessen (${kind}).`,
  'unknown-dynamic': ({ bar, mark }) => `Takt ${bar}: Das Lautstärkezeichen „${mark}“ ist unbekannt.`,
  'tempos-differ': ({ bar, markedQuarterBpm, playedQuarterBpm }) =>
    `Takt ${bar}: Die Metronomangabe meint ${NUMBERS.exact(markedQuarterBpm)} Viertel in der Minute, die Datei spielt ${NUMBERS.exact(playedQuarterBpm)}; die Angabe zählt.`,
  'tempo-assumed': ({ quarterBpm }) =>
    `Am Anfang steht kein Tempo; angenommen werden ${NUMBERS.exact(quarterBpm)} Viertel in der Minute.`,
};

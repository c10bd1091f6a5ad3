import { SMALLEST_HEARD_DB } from '../rules/sizes.js';
import type { SayingsWords } from '../shapes/sayings.js';
import { NUMBERS } from './numbers.js';
import { beatsIn, tempoIn } from './tempo.js';

const { down, exact, fixed, whole } = NUMBERS;
const size = (cents: number) => whole(Math.abs(Math.round(cents)));
const lean = (cents: number) => `${size(cents)} Cent zu ${cents > 0 ? 'hoch' : 'tief'}`;
const times = (count: number) => (count === 1 ? 'einmal' : count === 2 ? 'zweimal' : `${count}-mal`);
const decibels = (db: number) => (db < SMALLEST_HEARD_DB ? `weniger als ${SMALLEST_HEARD_DB} dB` : `${down(db)} dB`);
const places = (of: number) => (of === 1 ? 'an der einen Stelle' : `an allen ${of} Stellen`);
const usually = (of: number, db: number) => `${of === 1 ? '' : 'meist '}${decibels(db)}`;
const askedFor = (db: number) => `verlangt sind mindestens ${exact(db)} dB`;

const BESIDE_MARK = {
  'a-little-faster': 'etwas schneller, als es dasteht',
  faster: 'schneller, als es dasteht',
  'a-little-slower': 'etwas langsamer, als es dasteht',
  slower: 'langsamer, als es dasteht',
} as const;

/** What is said of a criterion in one line. */
export const SAYINGS: SayingsWords = {
  'notes-as-written': ({ right, of, unclear }) =>
    `${right} von ${of} Noten, wie sie dastehen${unclear > 0 ? `, ${unclear} nicht deutlich genug` : ''}`,
  'groups-even': ({ even, of }) => `${even} von ${of} Gruppen gleichmäßig`,
  'entries-in-time': ({ inTime, of }) => `${inTime} von ${of} Einsätzen nach Pausen pünktlich`,
  tempo: ({ played, beat }) => `${tempoIn(played, beat)}; kein Tempo steht da`,
  'tempo-beside-mark': ({ played, marked, heard, beat }) =>
    heard === 'as-marked'
      ? `wie es dasteht: ${tempoIn(played, beat)}`
      : `${BESIDE_MARK[heard]}: ${tempoIn(played, beat)}, ${whole(beatsIn(marked, beat))} stehen da`,
  'contrasts-plain': ({ of, usualDb, leastDb }) =>
    `laut und leise sind ${places(of)} klar verschieden: ${usually(of, usualDb)}, ${askedFor(leastDb)}`,
  'contrasts-reversed': ({ of }) => `laut und leise sind ${places(of)} vertauscht`,
  'contrasts-alike': ({ of, reversed, usualDb, leastDb }) => {
    const turned = reversed === 0 ? '' : `, ${times(reversed)} vertauscht`;
    return `laut und leise klingen ${places(of)} fast gleich${turned}: ${usually(of, usualDb)}, ${askedFor(leastDb)}`;
  },
  'contrasts-mixed': ({ of, plain, reversed, smallestDb, leastDb }) => {
    const smallest = `; der kleinste Unterschied ist ${decibels(smallestDb)}, ${askedFor(leastDb)}`;
    const turned = `, ${times(reversed)} vertauscht`;
    return `laut und leise sind an ${plain} von ${of} Stellen klar verschieden${reversed === 0 ? smallest : turned}`;
  },
  hairpins: ({ plain, of }) =>
    of === 1
      ? `die Gabel ist ${plain === 1 ? 'deutlich' : 'kaum zu hören'}`
      : `${plain} von ${of} Gabeln deutlich zu hören`,
  'wrong-order': ({ softer, louder }) => `im Ganzen ist ${softer} lauter als ${louder}`,
  'slurs-joined': ({ joined, of }) => `${joined} von ${of} gebundenen Noten verbunden`,
  'staccato-sounds': ({ percent }) => `Noten mit Staccato-Punkt klingen ${whole(percent)} Prozent ihrer Zeit`,
  'tenuto-sounds': ({ percent }) => `Noten mit Strich klingen ${whole(percent)} Prozent ihrer Zeit`,
  'breaths-heard': ({ heard, of }) => `an ${heard} von ${of} Atemzeichen geatmet`,
  'short-breaths': ({ count }) => (count === 1 ? 'einmal kurz statt voll' : `${count}-mal kurz statt voll`),
  'breaths-beyond': ({ count }) =>
    `${count} ${count === 1 ? 'weiteres steht' : 'weitere stehen'}, wo nicht alles gespielt wurde`,
  tuning: ({ a4Hz, cents, heard }) => {
    const [away, way, hertz] = [size(cents), cents > 0 ? 'hoch' : 'tief', `${fixed(a4Hz, 1)} Hz`];
    if (heard === 'off') return `${away} Cent zu ${way} gestimmt: A = ${hertz}`;
    return heard === 'exact'
      ? 'auf A = 440 Hz gestimmt'
      : `nahe an A = 440 Hz gestimmt: ${away} Cent zu ${way}, ${hertz}`;
  },
  register: ({ register, cents }) => `${register === 'low' ? 'tiefe' : 'hohe'} Töne ${lean(cents)}`,
  'loud-notes': ({ cents }) => `laute Töne gegen leise ${lean(cents)}`,
  'played-through': () => 'durchgespielt',
  restarts: ({ count }) => `${times(count)} neu begonnen`,
  skips: ({ count }) => `${times(count)} nach vorn gesprungen`,
};

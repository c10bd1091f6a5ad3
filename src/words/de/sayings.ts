import { SMALLEST_HEARD_CENTS, SMALLEST_HEARD_DB } from '../rules/sizes.js';
import type { SayingsWords } from '../shapes/sayings.js';
import { LEANING } from './leaning.js';
import { NUMBERS } from './numbers.js';
import { beatsIn, tempoIn } from './tempo.js';

const { down, exact, fixed, whole } = NUMBERS;
const size = (cents: number) => whole(Math.abs(Math.round(cents)));
const lean = (cents: number, than: string) =>
  `${cents > 0 ? 'höher' : 'tiefer'} als ${than} (${size(cents)} Cent; ab ${SMALLEST_HEARD_CENTS} hört man es)`;
const times = (count: number) => (count === 1 ? 'einmal' : count === 2 ? 'zweimal' : `${count}-mal`);
const decibels = (db: number) => (db < SMALLEST_HEARD_DB ? `weniger als ${SMALLEST_HEARD_DB} dB` : `${down(db)} dB`);
const places = (of: number) => (of === 1 ? 'an der einen Stelle' : `an allen ${of} Stellen`);
const usually = (of: number, db: number) => `${of === 1 ? '' : 'meist '}um ${decibels(db)}`;
const enough = (db: number) => `${exact(db)} dB reichen`;
const needed = (db: number) => `${exact(db)} dB braucht es`;

const missing = (count: number) => `an ${count} war nichts zu hören: Prüf, ob du dort Luft brauchst`;

const BESIDE_MARK = {
  'a-little-faster': 'etwas schneller, als es dasteht',
  faster: 'schneller, als es dasteht',
  'a-little-slower': 'etwas langsamer, als es dasteht',
  slower: 'langsamer, als es dasteht',
} as const;

const LOUD_TONE = {
  brighter: 'laut ist der Klang heller',
  'as-bright': 'laut ist der Klang so hell wie leise',
  darker: 'laut ist der Klang dunkler',
} as const;

/** What is said of a criterion in one line. */
export const SAYINGS: SayingsWords = {
  'notes-as-written': ({ right, of, unclear }) =>
    `${right} von ${of} Noten, wie sie dastehen${unclear > 0 ? `, ${unclear} nicht deutlich genug` : ''}`,
  'groups-even': ({ even, of }) => `${even} von ${of} Schlägen gleichmäßig`,
  'entries-in-time': ({ inTime, of }) => `${inTime} von ${of} Einsätzen nach Pausen pünktlich`,
  'groups-lean': LEANING.line,
  tempo: ({ played, beat }) => `${tempoIn(played, beat)}; kein Tempo steht da`,
  'tempo-beside-mark': ({ played, marked, heard, beat }) =>
    heard === 'as-marked'
      ? `wie es dasteht: ${tempoIn(played, beat)}`
      : `${BESIDE_MARK[heard]}: ${tempoIn(played, beat)}, ${whole(beatsIn(marked, beat))} stehen da`,
  'contrasts-plain': ({ of, usualDb, leastDb }) =>
    `laut und leise sind ${places(of)} klar verschieden, ${usually(of, usualDb)} (${enough(leastDb)})`,
  'contrasts-reversed': ({ of }) => `laut und leise sind ${places(of)} vertauscht`,
  'contrasts-alike': ({ of, reversed, usualDb, leastDb }) => {
    const turned = reversed === 0 ? '' : `, ${times(reversed)} vertauscht`;
    return `laut und leise klingen ${places(of)} fast gleich${turned}: verschieden ${usually(of, usualDb)}, ${needed(leastDb)}`;
  },
  'contrasts-mixed': ({ of, plain, reversed, smallestDb, leastDb }) => {
    const smallest = `; an der schwächsten um ${decibels(smallestDb)}, ${needed(leastDb)}`;
    const turned = `, ${times(reversed)} vertauscht`;
    return `laut und leise sind an ${plain} von ${of} Stellen klar verschieden${reversed === 0 ? smallest : turned}`;
  },
  hairpins: ({ plain, of }) =>
    of === 1
      ? `die Gabel ist ${plain === 1 ? 'deutlich' : 'kaum zu hören'}`
      : `${plain} von ${of} Gabeln deutlich zu hören`,
  'wrong-order': ({ softer, louder }) => `im Ganzen ist ${softer} lauter als ${louder}`,
  'slurs-joined': ({ joined, of }) => `${joined} von ${of} gebundenen Noten verbunden`,
  'staccato-sounds': ({ percent }) =>
    `Noten mit Staccato-Punkt klingen ${whole(percent)} Prozent ihrer Zeit (kurz: bis etwa 50)`,
  'staccato-half': ({ from, to }) =>
    whole(from) === whole(to) ? 'fast alle gleich' : `die Hälfte davon ${whole(from)} bis ${whole(to)} Prozent`,
  'accent-kinds': ({ short, long, of }) =>
    long === of
      ? 'Akzente mit langem Ton'
      : short === of
        ? 'Akzente kurz mit Lücke dahinter'
        : `von ${of} Akzenten ${short === 1 ? 'ist einer' : `sind ${short}`} kurz mit Lücke dahinter, ${long} mit langem Ton`,
  'tenuto-sounds': ({ percent }) => `Noten mit Strich klingen ${whole(percent)} Prozent ihrer Zeit (voll: fast 100)`,
  'breaths-heard': ({ heard, of }) =>
    heard === of
      ? `geatmet, wo ${of === 1 ? 'das Atemzeichen steht' : `die ${of} Atemzeichen stehen`}`
      : heard === 0
        ? `kein Atmen an ${of === 1 ? 'dem Atemzeichen' : `den ${of} Atemzeichen`} zu hören: Prüf, ob du dort Luft brauchst`
        : `an ${heard} von ${of} Atemzeichen geatmet; ${missing(of - heard)}`,
  'short-breaths': ({ count }) => (count === 1 ? 'einmal kurz statt voll' : `${count}-mal kurz statt voll`),
  'breaths-beyond': ({ count }) =>
    `${count} ${count === 1 ? 'weiteres steht' : 'weitere stehen'}, wo nicht alles gespielt wurde`,
  tuning: ({ a4Hz, cents, heard }) => {
    const [away, way, hertz] = [size(cents), cents > 0 ? 'hoch' : 'tief', `${fixed(a4Hz, 1)} Hz`];
    if (heard === 'off')
      return `zu ${way} gestimmt: ${away} Cent, ab ${SMALLEST_HEARD_CENTS} hört man es (A = ${hertz})`;
    return heard === 'exact'
      ? 'auf A = 440 Hz gestimmt'
      : `gut auf A = 440 Hz gestimmt; ${away} Cent zu ${way}, kaum zu hören`;
  },
  register: ({ register, cents }) => `${register === 'low' ? 'tiefe' : 'hohe'} Töne sind ${lean(cents, 'die anderen')}`,
  'loud-notes': ({ cents }) => `laute Töne sind ${lean(cents, 'leise')}`,
  'notes-steady': ({ steady, of }) => `${steady} von ${of} langen Tönen ruhig gehalten`,
  'with-vibrato': ({ count }) => `${count} mit Vibrato`,
  'air-under-slurs': ({ db }) =>
    db < SMALLEST_HEARD_DB
      ? 'unter Bögen fließt die Luft gleichmäßig'
      : `unter Bögen wird der Ton von Note zu Note für einen Augenblick um ${down(db)} dB leiser`,
  'notes-speak': ({ prompt, of }) =>
    prompt === of
      ? 'nach Stille sprechen die Töne sofort an'
      : `nach Stille sprechen ${prompt} von ${of} Tönen sofort an`,
  'tone-over-breath': ({ db }) => `der Ton ist um ${whole(db)} dB lauter als der Atem darin`,
  'loud-tone': ({ beside }) => LOUD_TONE[beside],
  'played-through': () => 'durchgespielt',
  restarts: ({ count }) => `${times(count)} neu begonnen`,
  skips: ({ count }) => `${times(count)} nach vorn gesprungen`,
};

import { SMALLEST_HEARD_CENTS } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { noteName } from '../names.js';
import { NUMBERS } from '../numbers.js';

const { whole } = NUMBERS;
const direction = (cents: number) => (cents > 0 ? 'zu hoch' : 'zu tief');
/** In Zahlen, wie sie dastehen: Was sich zu nichts rundet, stimmt. */
const placed = (cents: number) =>
  Math.abs(cents) < 0.5 ? 'stimmt es' : `ist es um ${whole(Math.abs(cents))} Cent ${direction(cents)}`;
const heard = (cents: number) => `${whole(Math.abs(cents))} Cent; ab ${SMALLEST_HEARD_CENTS} hört man es`;

/** What is said of intonation. */
export const INTONATION = {
  'note-out-of-tune': {
    headline: 'Ein Ton passt nicht zu den anderen',
    text: (f) =>
      `Das ${noteName(f.written)} ist neben deinen anderen Tönen ${direction(f.cents)}: ${heard(f.cents)}.${f.times > 1 ? ` So ist es ${f.times}-mal in dieser Aufnahme.` : ''}${f.secondCents === undefined ? '' : ` Nach einem zweiten Messverfahren ${placed(f.secondCents)}: Verlass dich hier auf ein Stimmgerät.`}`,
    why: 'Einen Ton, der von seinen Nachbarn abweicht, hört man auch in einem großen Register.',
    practice:
      'Halte diesen Ton zu einem Liegeton oder Stimmgerät. Komm dann von der Note davor zu ihm und prüf noch einmal.',
    caption: 'Der Pfeil zeigt, ob der Ton zu hoch oder zu tief ist.',
  },
  'tuning-off': {
    headline: 'Das Instrument ist nicht auf A = 440 Hz gestimmt',
    text: (f) =>
      `Die ganze Aufnahme ist ${direction(f.cents)}: ${heard(f.cents)}. Deine Töne passen zueinander; das Instrument ist ${direction(f.cents)}.`,
    why: 'Nur von einem gemeinsamen Ton aus kann das Register zusammen stimmen.',
    practice: (f) =>
      `Spiel dich ein, stimm neu und ${f.cents > 0 ? 'zieh es etwas aus' : 'schieb es etwas zusammen'}, bevor du aufnimmst.`,
    caption: null,
  },
} satisfies Partial<FindingsWords>;

import { isHardlyAny, isJustUnder, SMALLEST_HEARD_DB } from '../../rules/sizes.js';
import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { tenth, whole } = NUMBERS;
const GRADUAL = 'Eine Änderung nach und nach nutzt alle ihre Takte und kommt an ihrem Zeichen an.';
const LEVELS = 'Die zwei dicken Linien sind dein Klang vor und nach dem Wechsel: Höher ist lauter.';
const WEDGE = 'Unter der gedruckten Gabel ist deine: Je weiter sie aufgeht, desto mehr hat sich der Klang geändert.';
const WEDGES = { crescendo: 'Crescendo', diminuendo: 'Diminuendo' } as const;

/** A hairpin that is large enough and over too soon, or turned back. */
const COURSES: Readonly<Record<'early' | 'turned-back', (kind: 'crescendo' | 'diminuendo') => string>> = {
  early: (kind) =>
    kind === 'crescendo'
      ? 'Das Crescendo ist zu früh fertig: In der Mitte hat es fast seine ganze Kraft. Hör, ob es noch wächst.'
      : 'Das Diminuendo ist zu früh fertig: In der Mitte ist es fast so leise wie am Ende. Hör, ob es noch leiser wird.',
  'turned-back': (kind) =>
    kind === 'crescendo'
      ? 'Das Crescendo wächst, wird aber vor dem Ende wieder leiser. Hör, ob es ankommt.'
      : 'Das Diminuendo wird leiser, aber vor dem Ende wieder lauter. Hör, ob es ankommt.',
};

/** What is said of dynamics. */
export const DYNAMICS = {
  'weak-contrast': {
    headline: 'Laut und leise sind zu ähnlich',
    text: (f) =>
      f.byRegister
        ? f.asked
          ? `Von ${f.from} zu ${f.to} kommt der Unterschied von selbst, durch hohe und tiefe Töne. Du gibst ${added(f.db)} dazu.`
          : `Von ${f.from} zu ${f.to} kommt der Unterschied von selbst, durch hohe und tiefe Töne. Du gibst ${added(f.db)} dazu; man braucht ${whole(f.least)}.`
        : f.asked
          ? `Von ${f.from} zu ${f.to} ändert sich der Klang zu wenig: ${tooLittle(f.db, f.least)}. Im Auftrag stehen ${tenth(f.least)} oder mehr.`
          : `Von ${f.from} zu ${f.to} ändert sich der Klang kaum: ${tooLittle(f.db, f.least)}. Erst ab ${whole(f.least)} hört man zwei Stufen.`,
    why: 'Zeichen, die auf dem Blatt verschieden sind, müssen es auch für jemanden ganz hinten im Saal sein.',
    practice: (f) =>
      `Spiel einen langen Ton in ${f.from}, dann in ${f.to}. Mach den Unterschied größer, als du glaubst. Spiel dann die Stelle.`,
    caption: LEVELS,
  },
  'reversed-contrast': {
    headline: 'Das leisere Zeichen klang lauter',
    text: (f) => `Beim Wechsel von ${f.from} zu ${f.to} geht der Klang in die andere Richtung, um ${heard(f.db)}.`,
    why: 'An laut und leise hören die Leute, wohin die Musik geht.',
    practice: (f) =>
      `Sag die Zeichen laut, sobald sie kommen. Spiel den letzten Takt in ${f.from} und den ersten in ${f.to}, bis man den Wechsel klar hört.`,
    caption: LEVELS,
  },
  'weak-hairpin': {
    headline: 'Die Gabel ändert zu wenig',
    text: (f) =>
      f.course
        ? COURSES[f.course](f.kind)
        : f.byRegister
          ? f.asked
            ? `Was man vom ${WEDGES[f.kind]} hört, kommt von selbst, durch hohe und tiefe Töne. Du gibst ${added(f.db)} dazu.`
            : `Was man vom ${WEDGES[f.kind]} hört, kommt von selbst, durch hohe und tiefe Töne. Du gibst ${added(f.db)} dazu; man braucht ${whole(f.least)}.`
          : f.asked
            ? `Das ${WEDGES[f.kind]} ist zu klein: ${tooLittle(f.db, f.least)} vom ersten bis zum letzten Ton. Im Auftrag stehen ${tenth(f.least)} oder mehr.`
            : `Das ${WEDGES[f.kind]} bewegt sich kaum: ${tooLittle(f.db, f.least)} vom ersten bis zum letzten Ton. Erst ab ${whole(f.least)} hört man es.`,
    why: GRADUAL,
    practice: (f) =>
      f.course
        ? 'Zeichne die Mitte der Gabel in deine Noten. Spiel bis dorthin die halbe Änderung und heb den Rest für danach auf.'
        : f.kind === 'crescendo'
          ? 'Fang leiser an, als du denkst. Spiel es zuerst auf einem Ton, mit jedem Schlag etwas lauter, dann wie es dasteht.'
          : 'Fang mit vollem Klang an. Spiel es zuerst auf einem Ton, mit jedem Schlag etwas leiser, dann wie es dasteht.',
    caption: WEDGE,
  },
  'reversed-hairpin': {
    headline: 'Die Gabel geht in die andere Richtung',
    text: (f) =>
      `Das ${WEDGES[f.kind]} geht in die andere Richtung: Der Klang wird ${f.kind === 'crescendo' ? 'leiser' : 'lauter'}, um ${heard(f.db)}.`,
    why: GRADUAL,
    practice:
      'Spiel es zuerst auf einem Ton und folge der Gabel mit der Hand oder den Augen. Spiel es dann, wie es dasteht.',
    caption: WEDGE,
  },
} satisfies Partial<FindingsWords>;

/** A size in decibels in words; the unit has no plural. */
function spoken(db: number): string {
  return isHardlyAny(Math.abs(db)) ? 'weniger als ein Dezibel' : `${tenth(Math.abs(db))} Dezibel`;
}

/** A size beside the smallest that is heard. */
function heard(db: number): string {
  return Math.abs(db) < SMALLEST_HEARD_DB
    ? `${spoken(db)}, zu wenig zum Hören`
    : `${spoken(db)}; ab ${SMALLEST_HEARD_DB} hört man es`;
}

/** A size that falls short; one that would read as enough when rounded is said to be just under. */
function tooLittle(db: number, least: number): string {
  return isJustUnder(db, least) ? `knapp unter ${tenth(least)} Dezibel` : spoken(db);
}

/** What a player adds to a change that the instrument makes by itself. */
function added(db: number): string {
  return isHardlyAny(db) ? 'nichts' : `nur ${tenth(db)} Dezibel`;
}

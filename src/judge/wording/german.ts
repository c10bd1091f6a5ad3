import type { MisreadingKind } from '../../score/index.js';
import type { Facts, Praise } from '../observation.js';
import { GERMAN_SUMMARIES } from './german-summaries.js';
import { noteNameIn } from './note-name-in.js';
import type { FindingWords, JudgeWords, Words } from './words.js';

const whole = (value: number) => String(Math.round(value));
const tenth = (value: number) => String(Math.round(10 * value) / 10).replace('.', ',');
const direction = (cents: number) => (cents > 0 ? 'zu hoch' : 'zu tief');
const note = (name: string) => noteNameIn('de', name);

const MISREADINGS: Readonly<Record<MisreadingKind, (f: Facts['accidental']) => Words>> = {
  'key-signature-forgotten': (f) => ({
    text: `Du hast ${note(f.played)} gespielt. Die Vorzeichen am Anfang der Zeile machen hier aus jedem ${note(f.letter)} ein ${note(f.written)}.`,
    practice: `Sag vor dem Spielen jedes ${note(f.written)} der Zeile laut beim Namen. Spiel den Takt dann langsam.`,
  }),
  'accidental-forgotten': (f) => ({
    text: `Das Zeichen direkt vor dieser Note wurde übersehen: Sie heißt ${note(f.written)}, du hast ${note(f.played)} gespielt.`,
    practice: 'Kreise das Zeichen ein. Spiel fünfmal nur die Note davor und diese Note, dann den ganzen Takt.',
  }),
  'dropped-within-bar': (f) => ({
    text: `Das Zeichen von weiter vorn im Takt gilt hier noch. Die Note heißt ${note(f.written)}, du hast ${note(f.played)} gespielt.`,
    practice:
      'Ein Zeichen gilt bis zum Taktstrich. Schreib es mit Bleistift noch einmal vor diese Note und spiel den Takt zweimal langsam.',
  }),
  'carried-past-barline': (f) => ({
    text: `Das Zeichen aus dem Takt davor endet am Taktstrich. Hier heißt die Note wieder ${note(f.written)}, du hast ${note(f.played)} gespielt.`,
    practice:
      'Spiel den letzten Schlag des Takts davor und den ersten von diesem, langsam, und sag beide Noten beim Namen.',
  }),
  'wrong-octave-applied': (f) => ({
    text: `Das Zeichen in diesem Takt gilt nur für die Note in der anderen Oktave. Diese hier heißt ${note(f.written)}, du hast ${note(f.played)} gespielt.`,
    practice: 'Such beide Noten im Takt. Sag jede mit ihrem eigenen Namen und spiel sie dann nacheinander.',
  }),
};

const ENDS =
  'Spiel die ersten zwei Takte mit dem Metronom, gleich darauf die letzten zwei, und hör, ob sie dazu passen.';

const FINDINGS: FindingWords = {
  accidental: (f) => MISREADINGS[f.misreading](f),
  'wrong-note': (f) => ({
    text:
      f.octave === null
        ? `Hier steht ein ${note(f.written)}; geklungen hat ein ${note(f.played)}.`
        : `Das ${note(f.written)} klang eine Oktave ${f.octave === 'higher' ? 'höher' : 'tiefer'}, als es dasteht.`,
    practice:
      'Sing oder sag zuerst die Noten dieses Takts. Spiel ihn dann halb so schnell, bis er dreimal hintereinander stimmt.',
  }),
  'missed-note': (f) => ({
    text: f.sure
      ? `Das ${note(f.written)} hier wurde ausgelassen.`
      : `Das ${note(f.written)} hier war nicht zu hören. Vielleicht kam der Ton nicht, oder er war sehr leise.`,
    practice: 'Spiel langsam von zwei Noten davor bis zwei Noten danach und hör zu, ob jeder Ton kommt.',
  }),
  'added-note': (f) => ({
    text:
      f.after === null
        ? `Ein ${note(f.played)} zu viel klang, bevor die Musik anfängt.`
        : `Ein ${note(f.played)} zu viel klang nach dem ${note(f.after)}.`,
    practice: 'Spiel diese Stelle langsam und beweg alle Finger im selben Moment.',
  }),
  'skipped-bars': (f) => ({
    text: f.fileEnds
      ? 'Die Aufnahme bricht hier ab. Was danach kommt, lässt sich nicht beurteilen.'
      : f.atEnd
        ? 'Die Musik hört hier auf: Was danach kommt, wurde nicht gespielt.'
        : `Die Musik springt hier nach vorn, über alles bis Takt ${f.toBar}.`,
    practice: f.fileEnds
      ? 'Speichere die Aufnahme noch einmal oder nimm neu auf.'
      : 'Mach eine Klammer um die Stelle. Fang zwei Takte vorher an und spiel hindurch, ohne anzuhalten.',
  }),
  restart: (f) => ({
    text: f.whole
      ? 'Du hast bis zum letzten Takt gespielt und dann neu begonnen. Auf diesen Seiten zählt, was du beim zweiten Mal gespielt hast.'
      : `Du hast in Takt ${f.stoppedAtBar} angehalten und hier neu begonnen. Auf diesen Seiten zählt, was du beim zweiten Mal gespielt hast.`,
    practice: f.whole
      ? 'Nimm jedes Mal für sich auf, wenn du es spielst. Dann kannst du vergleichen.'
      : 'Spiel nach einem Fehler weiter: Fang zwei Takte vorher an und halte nicht an, was auch kommt.',
  }),
  'weak-contrast': (f) => ({
    text: f.byRegister
      ? `Von ${f.from} zu ${f.to} kommt der Unterschied von selbst, durch hohe und tiefe Töne. Du gibst ${added(f.db)} dazu.`
      : `Von ${f.from} zu ${f.to} ändert sich der Klang kaum: ${tooLittle(f.db, f.least)}. Erst ab ${whole(f.least)} hört man zwei Stufen.`,
    practice: `Spiel einen langen Ton in ${f.from}, dann in ${f.to}. Mach den Unterschied größer, als du glaubst. Spiel dann die Stelle.`,
  }),
  'reversed-contrast': (f) => ({
    text: `Beim Wechsel von ${f.from} zu ${f.to} geht der Klang in die andere Richtung, um ${spoken(f.db)}.`,
    practice: `Sag die Zeichen laut, sobald sie kommen. Spiel den letzten Takt in ${f.from} und den ersten in ${f.to}, bis man den Wechsel klar hört.`,
  }),
  'weak-hairpin': (f) => ({
    text: f.course
      ? COURSES[f.course](f.kind)
      : f.byRegister
        ? `Was man vom ${WEDGES[f.kind]} hört, kommt von selbst, durch hohe und tiefe Töne. Du gibst ${added(f.db)} dazu.`
        : `Das ${WEDGES[f.kind]} bewegt sich kaum: ${tooLittle(f.db, f.least)} vom ersten bis zum letzten Ton. Es braucht ${whole(f.least)} oder mehr.`,
    practice: f.course
      ? 'Zeichne die Mitte der Gabel in deine Noten. Spiel bis dorthin die halbe Änderung und heb den Rest für danach auf.'
      : f.kind === 'crescendo'
        ? 'Fang leiser an, als du denkst. Spiel es zuerst auf einem Ton, mit jedem Schlag etwas lauter, dann wie es dasteht.'
        : 'Fang mit vollem Klang an. Spiel es zuerst auf einem Ton, mit jedem Schlag etwas leiser, dann wie es dasteht.',
  }),
  'reversed-hairpin': (f) => ({
    text: `Das ${WEDGES[f.kind]} geht in die andere Richtung: Der Klang wird um ${spoken(f.db)} ${f.kind === 'crescendo' ? 'leiser' : 'lauter'}.`,
    practice:
      'Spiel es zuerst auf einem Ton und folge der Gabel mit der Hand oder den Augen. Spiel es dann, wie es dasteht.',
  }),
  'fermata-long': (f) => ({
    text: `Die Fermate dauert ${tenth(f.ratio)}-mal so lang wie notiert. Etwa doppelt so lang ist üblich; mehr als ${tenth(f.most)}-mal so lang hält die Musik an.`,
    practice: 'Zähl die Schläge im Stillen noch einmal, dann lass los.',
  }),
  'fermata-short': (f) => ({
    text: `Die Fermate dauert nur ${tenth(f.ratio)}-mal so lang wie notiert. Sie darf ruhen: mindestens ${tenth(f.least)}-mal so lang.`,
    practice: 'Zähl die Schläge, warte noch einmal etwa so lang, und geh dann weiter.',
  }),
  'late-entry': (f) => ({
    text: `Die Note nach der Pause kommt zu spät, um ${hundredths(f.milliseconds)} Sekunden.`,
    practice: `Zähl die Pause in kleinen Noten: Sag ${counting(f.restQuarters)} laut mit und spiel auf die nächste.`,
  }),
  'early-entry': (f) => ({
    text: `Die Note nach der Pause kommt zu früh, um ${hundredths(f.milliseconds)} Sekunden.`,
    practice: `Gib der Pause ihre volle Länge: Sag ${counting(f.restQuarters)} laut mit und spiel dann.`,
  }),
  'uneven-group': (f) => ({
    text: `Die ${f.notes} Noten dieser ${f.tuplet && f.notes === 3 ? 'Triole' : 'Gruppe'} sind nicht gleich lang: Die ${ORDINALS[f.which] ?? 'letzte'} nimmt ${whole(100 * f.share)} statt ${whole(100 * f.written)} Prozent der Zeit.`,
    practice:
      'Klopf den Schlag und sprich die Gruppe, eine Silbe für jede Note. Spiel sie auf einem Ton, dann wie sie dasteht, erst gebunden, dann gestoßen.',
  }),
  hesitation: (f) => ({
    text: `Die Musik wartet hier ${tenth(f.seconds)} Sekunden lang.`,
    practice:
      'Schau beim Spielen einen Takt voraus. Fang zwei Takte vorher an und halte den Schlag durch diese Stelle durch.',
  }),
  rushing: (f) => ({
    text: f.throughout
      ? `Das Tempo wird vom Anfang bis zum Ende schneller, um etwa ${whole(f.percent)} Prozent.`
      : `Das Tempo läuft hier davon, um etwa ${whole(f.percent)} Prozent.`,
    practice: f.throughout ? ENDS : 'Spiel diese Takte mit dem Metronom nur auf den leichten Schlägen.',
  }),
  dragging: (f) => ({
    text: f.throughout
      ? `Das Tempo wird vom Anfang bis zum Ende langsamer, um etwa ${whole(f.percent)} Prozent.`
      : `Das Tempo sinkt hier, um etwa ${whole(f.percent)} Prozent.`,
    practice: f.throughout
      ? ENDS
      : 'Such den schwersten Schlag in diesen Takten und übe ihn allein, dann mit dem Metronom.',
  }),
  'slur-broken': (f) => ({
    text: `Der Bogen bricht vor dieser Note ab: Da ist eine Lücke von ${hundredths(f.milliseconds)} Sekunden.`,
    practice: 'Lass die Luft durch den Wechsel strömen. Spiel die zwei Noten zehnmal langsam gebunden, ohne Zunge.',
  }),
  'staccato-long': (f) => ({
    text: f.all
      ? `Die meisten Staccato-Noten klingen ${whole(f.percent)} Prozent ihrer Zeit. Es kann der Raum sein: Hör, ob die Lücken da sind.`
      : `Diese Staccato-Note klingt ${whole(f.percent)} Prozent ihrer Zeit${f.usual === null ? '' : `; deine anderen ${whole(f.usual)}`}.`,
    practice: 'Beende den Ton früh und lass Stille. Spiel vier davon auf einem Ton und hör auf die Lücken.',
  }),
  'accent-weak': (f) => ({
    text: f.falls
      ? 'Diese Note soll nur am Anfang laut sein. Sie bleibt fast so laut, wie sie begann.'
      : `Der Akzent hebt sich nicht ab: Er ist ${f.db < 0 ? 'leiser als' : 'so laut wie'} die Noten um ihn herum.`,
    practice: f.falls
      ? 'Spiel die Note zweimal: zuerst nur den Anfang, dann nur das leise Ende. Setz dann beides zusammen.'
      : 'Fang den Ton mit schneller Luft und klarer Zunge an, dann lass gleich nach. Lass die Noten daneben, wie sie sind.',
  }),
  'breath-unmarked': (f) => ({
    text: f.inSlur
      ? 'Nach dieser Note hast du geatmet, mitten im Bogen.'
      : 'Nach dieser Note hast du geatmet, ohne dass ein Atemzeichen dasteht.',
    practice:
      'Atme beim Zeichen davor voll ein und spiel in einer Linie bis zum nächsten. Mach Pause, wenn dir schwindlig wird.',
  }),
  'breath-late': (f) => ({
    text: `Das Atmen dauert hier ${tenth(f.seconds)} Sekunden zu lang, darum kommt die nächste Note zu spät.`,
    practice: 'Kürze die Note vor dem Atmen, nicht den Schlag danach. Atme tief und schnell.',
  }),
  'tuning-off': (f) => ({
    text: `Die ganze Aufnahme ist gegen A = 440 um ${whole(Math.abs(f.cents))} Cent ${direction(f.cents)}. Deine Töne passen zueinander; das Instrument steht ${direction(f.cents)}.`,
    practice: `Spiel dich ein, stimm neu und ${f.cents > 0 ? 'zieh es etwas aus' : 'schieb es etwas zusammen'}, bevor du aufnimmst.`,
  }),
  'note-out-of-tune': (f) => ({
    text: `Das ${note(f.written)} ist in deiner eigenen Stimmung um ${whole(Math.abs(f.cents))} Cent ${direction(f.cents)}${f.times > 1 ? `, und zwar ${f.times}-mal in dieser Aufnahme` : ''}.`,
    practice:
      'Halte diesen Ton zu einem Liegeton oder Stimmgerät. Komm dann von der Note davor zu ihm und prüf noch einmal.',
  }),
  'off-tempo': (f) => ({
    text: `Du hast etwa ${whole(f.played)} Viertel in der Minute gespielt; ${whole(f.marked)} stehen da.`,
    practice:
      f.played < f.marked
        ? 'Wenn das nicht so gedacht war, stell das Metronom jeden Tag um vier höher.'
        : 'Lass das Metronom zwei Takte laufen, bevor du anfängst, und atme mit ihm.',
  }),
  'went-well': (f) => ({ text: PRAISE[f.about.what](f.about as never), practice: '' }),
};

const WEDGES = { crescendo: 'Crescendo', diminuendo: 'Diminuendo' } as const;

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

type PraiseOf<W extends Praise['what']> = Extract<Praise, { what: W }>;

const PRAISE: { readonly [W in Praise['what']]: (p: PraiseOf<W>) => string } = {
  accidentals: (p) => `Alle ${p.count} Noten mit einem kniffligen Vorzeichen waren richtig.`,
  notes: (p) => `${p.right} von ${p.of} Noten waren so, wie sie dastehen.`,
  contrast: (p) => `Der Wechsel von ${p.from} zu ${p.to} ist klar zu hören: ${whole(p.db)} Dezibel.`,
  hairpin: (p) =>
    `Dieses ${WEDGES[p.kind]} wird wirklich ${p.kind === 'crescendo' ? 'lauter' : 'leiser'}: ${whole(p.db)} Dezibel vom ersten bis zum letzten Ton.`,
  fermatas: (p) => FERMATAS[p.count] ?? `Alle ${p.count} Fermaten haben eine gute Länge.`,
  'steady-tempo': (p) =>
    `Dein Tempo ist stetig: ${whole(p.quarterBpm)} Viertel in der Minute. Fast jeder Takt weicht um höchstens ${Math.max(1, Math.ceil(p.percent))} Prozent davon ab.`,
  intonation: (p) =>
    `Deine Töne stimmen gut zueinander: ${whole(100 * p.share)} von 100 liegen innerhalb von ${whole(p.cents)} Cent.`,
};

const FERMATAS: Readonly<Record<number, string>> = {
  1: 'Die Fermate hat eine gute Länge.',
  2: 'Beide Fermaten haben eine gute Länge.',
};

function barList(bars: readonly string[]): string {
  return bars.length === 1 ? `Takt ${bars[0]}` : `den Takten ${bars.slice(0, -1).join(', ')} und ${bars.at(-1)}`;
}

const ORDINALS = ['erste', 'zweite', 'dritte', 'vierte', 'fünfte', 'sechste', 'siebte', 'achte'];

function hundredths(milliseconds: number): string {
  return (Math.max(10, Math.round(milliseconds / 10) * 10) / 1000).toFixed(2).replace('.', ',');
}

/** Syllables that fill a rest with small values. Source: common practice. */
function counting(restQuarters: number): string {
  return restQuarters < 0.5 ? '„eins-e-und-e“' : '„eins und zwei und“';
}

/** A size in decibels in words; the unit has no plural. */
function spoken(db: number): string {
  return Math.abs(db) < 0.5 ? 'weniger als ein Dezibel' : `${tenth(Math.abs(db))} Dezibel`;
}

/** A size that falls short; one that would read as enough when rounded is said to be just under. */
function tooLittle(db: number, least: number): string {
  return Math.round(10 * db) / 10 >= least ? `knapp unter ${tenth(least)} Dezibel` : spoken(db);
}

/** What a player adds to a change that the instrument makes by itself. */
function added(db: number): string {
  return db < 0.5 ? 'nichts' : `nur ${tenth(db)} Dezibel`;
}

/** Everything the judges say, in German. */
export const GERMAN: JudgeWords = {
  findings: FINDINGS,
  summaries: GERMAN_SUMMARIES,
  alsoIn: (bars) => (bars.length === 0 ? '' : ` Dasselbe geschieht in ${barList(bars)}.`),
  perhapsIn: (bars) => (bars.length === 0 ? '' : ` Hör auch in ${barList(bars)} genau hin.`),
};

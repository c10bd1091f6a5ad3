import { saidOf } from '../../rules/said-of.js';
import type { FindingsWords, MisreadingsWords } from '../../shapes/findings.js';
import { noteName } from '../names.js';

const ACCIDENTAL_RULE =
  'Ein Vorzeichen gilt bis zum Taktstrich, nur auf seiner Linie oder in seinem Raum. Danach gelten wieder die Vorzeichen vom Anfang der Zeile.';
const RING = 'Ein Ring zeigt die Note; darüber steht in Klammern, was du gespielt hast.';

/** What is said of each way to misread an accidental. */
export const MISREADINGS: MisreadingsWords = {
  'key-signature-forgotten': {
    headline: 'Die Vorzeichen am Anfang der Zeile wurden vergessen',
    text: (f) =>
      `Du hast ${noteName(f.played)} gespielt. Die Vorzeichen am Anfang der Zeile machen hier aus jedem ${noteName(f.letter)} ein ${noteName(f.written)}.`,
    why: 'Sie gelten auf jeder Zeile und in jeder Oktave, bis neue kommen.',
    practice: (f) =>
      `Sag vor dem Spielen jedes ${noteName(f.written)} der Zeile laut beim Namen. Spiel den Takt dann langsam.`,
  },
  'accidental-forgotten': {
    headline: 'Ein Vorzeichen wurde übersehen',
    text: (f) => `Das Vorzeichen direkt vor dieser Note wurde übersehen. ${isCalled(f)}`,
    why: ACCIDENTAL_RULE,
    practice: 'Kreise das Vorzeichen ein. Spiel fünfmal nur die Note davor und diese Note, dann den ganzen Takt.',
  },
  'dropped-within-bar': {
    headline: 'Ein Vorzeichen von vorn im Takt gilt noch',
    text: (f) => `Das Vorzeichen von weiter vorn im Takt gilt hier noch. ${isCalled(f)}`,
    why: ACCIDENTAL_RULE,
    practice:
      'Es gilt bis zum Taktstrich. Schreib es mit Bleistift noch einmal vor diese Note und spiel den Takt zweimal langsam.',
  },
  'carried-past-barline': {
    headline: 'Ein Vorzeichen wurde über den Taktstrich mitgenommen',
    text: (f) => `Das Vorzeichen aus dem Takt davor endet am Taktstrich. ${isCalled(f)}`,
    why: ACCIDENTAL_RULE,
    practice:
      'Spiel den letzten Schlag des Takts davor und den ersten von diesem, langsam, und sag beide Noten beim Namen.',
  },
  'wrong-octave-applied': {
    headline: 'Ein Vorzeichen wurde in einer anderen Oktave gespielt',
    text: (f) => `Das Vorzeichen in diesem Takt gilt nur für die Note in der anderen Oktave. ${isCalled(f)}`,
    why: ACCIDENTAL_RULE,
    practice: 'Such beide Noten im Takt. Sag jede mit ihrem eigenen Namen und spiel sie dann nacheinander.',
  },
};

/** What is said of notes. */
export const NOTES = {
  accidental: {
    headline: 'Ein Vorzeichen wurde falsch gelesen',
    text: (f) => saidOf(MISREADINGS[f.misreading].text, f),
    why: ACCIDENTAL_RULE,
    practice: (f) => saidOf(MISREADINGS[f.misreading].practice, f),
    caption: RING,
  },
  'wrong-note': {
    headline: 'Es wurde eine andere Note gespielt',
    text: (f) =>
      f.octave === null
        ? isCalled(f)
        : `Das ${noteName(f.written)} klang eine Oktave ${f.octave === 'higher' ? 'höher' : 'tiefer'}, als es dasteht.`,
    why: 'Eine falsche Note, die man wiederholt, ist bald gelernt. Stell sie langsam richtig, bevor sie sich festsetzt.',
    practice:
      'Sing oder sag zuerst die Noten dieses Takts. Spiel ihn dann halb so schnell, bis er dreimal hintereinander stimmt.',
    caption: RING,
  },
  'missed-note': {
    headline: 'Eine Note fehlt',
    text: (f) =>
      f.sure
        ? `Das ${noteName(f.written)} hier wurde ausgelassen.`
        : `Das ${noteName(f.written)} war nicht zu hören, vielleicht kam es zu leise.`,
    why: 'Jede Note trägt die Linie zur nächsten.',
    practice: 'Spiel langsam von zwei Noten davor bis zwei Noten danach und hör zu, ob jeder Ton kommt.',
    caption: 'Der offene Pfeil zeigt auf die Note, die nicht zu hören war.',
  },
  'added-note': {
    headline: 'Eine Note kam dazu',
    text: (f) =>
      f.after === null
        ? `Ein ${noteName(f.played)} zu viel klang, bevor die Musik anfängt.`
        : `Ein ${noteName(f.played)} zu viel klang nach dem ${noteName(f.after)}.`,
    why: 'Oft heißt eine Note zu viel, dass Hand oder Luft einen Moment zu früh gewechselt haben.',
    practice: 'Spiel diese Stelle langsam. Hand, Zunge und Luft wechseln im selben Moment.',
    caption: 'Das Kreuz zeigt die Note zu viel; ihr Name steht in Klammern.',
  },
} satisfies Partial<FindingsWords>;

function isCalled({ written, played }: { readonly written: string; readonly played: string }): string {
  return `Die Note hier heißt ${noteName(written)}; du hast ${noteName(played)} gespielt.`;
}

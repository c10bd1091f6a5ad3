import type { Criterion, FindingKind } from '../../judge/index.js';
import type { MisreadingKind } from '../../score/index.js';
import type { FindingWords } from '../finding-words.js';

const ACCIDENTAL_RULE =
  'Ein Zeichen gilt bis zum Taktstrich, nur auf seiner Linie oder in seinem Raum. Danach gelten wieder die Vorzeichen vom Anfang der Zeile.';

const MISREADINGS: Record<MisreadingKind, FindingWords> = {
  'key-signature-forgotten': {
    headline: 'Die Vorzeichen am Anfang der Zeile wurden vergessen',
    why: 'Sie gelten auf jeder Zeile und in jeder Oktave, bis neue kommen.',
  },
  'accidental-forgotten': { headline: 'Ein Zeichen vor der Note wurde übersehen', why: ACCIDENTAL_RULE },
  'dropped-within-bar': { headline: 'Ein Zeichen von vorn im Takt gilt noch', why: ACCIDENTAL_RULE },
  'carried-past-barline': { headline: 'Ein Zeichen wurde über den Taktstrich mitgenommen', why: ACCIDENTAL_RULE },
  'wrong-octave-applied': { headline: 'Ein Zeichen wurde in einer anderen Oktave gespielt', why: ACCIDENTAL_RULE },
};

const FORESEEN = 'Andere können nur mit einem Schlag mitspielen, den sie kommen sehen.';
const GRADUAL = 'Eine Änderung nach und nach nutzt alle ihre Takte und kommt an ihrem Zeichen an.';

const KINDS: Record<FindingKind, FindingWords> = {
  accidental: { headline: 'Ein Vorzeichen wurde falsch gelesen', why: ACCIDENTAL_RULE },
  'wrong-note': {
    headline: 'Es wurde eine andere Note gespielt',
    why: 'Eine falsche Note, die man wiederholt, ist bald gelernt. Stell sie langsam richtig, bevor sie sich festsetzt.',
  },
  'missed-note': { headline: 'Eine Note fehlt', why: 'Jede Note trägt die Linie zur nächsten.' },
  'added-note': {
    headline: 'Eine Note kam dazu',
    why: 'Oft heißt eine Note zu viel, dass Finger oder Luft einen Moment zu früh gewechselt haben.',
  },
  'skipped-bars': {
    headline: 'Einige Takte wurden übersprungen',
    why: 'Beim Vorspiel und im Register zählt jeder Takt.',
  },
  restart: {
    headline: 'Das Spiel hielt an und begann neu',
    why: 'Nach einem Fehler weiterzuspielen will gelernt sein, und beim Vorspiel braucht man es.',
  },
  hesitation: {
    headline: 'Die Musik stand einen Moment still',
    why: 'Für alle anderen geht der Schlag weiter, also muss er auch bei dir weitergehen.',
  },
  'late-entry': {
    headline: 'Der Einsatz kam zu spät',
    why: 'Auch eine Pause wird gespielt: Zähl sie in kleinen Werten, dann sitzt der Einsatz.',
  },
  'early-entry': {
    headline: 'Der Einsatz kam zu früh',
    why: 'Auch eine Pause wird gespielt: Zähl sie ganz zu Ende, bevor du einsetzt.',
  },
  'uneven-group': {
    headline: 'Die Noten des Schlags sind nicht gleich lang',
    why: 'Die Teile eines Schlags bleiben gleich, auch bei Sprüngen und wenn die Bögen wechseln.',
  },
  rushing: { headline: 'Das Tempo läuft davon', why: FORESEEN },
  dragging: { headline: 'Das Tempo wird langsamer', why: FORESEEN },
  'off-tempo': {
    headline: 'Das Tempo ist ein anderes, als dasteht',
    why: 'Das Tempo gibt dem Stück seinen Charakter. Zum Üben ist ein langsames richtig.',
  },
  'weak-contrast': {
    headline: 'Laut und leise klingen fast gleich',
    why: 'Zeichen, die auf dem Blatt verschieden sind, müssen es auch für jemanden ganz hinten im Saal sein.',
  },
  'reversed-contrast': {
    headline: 'Das leisere Zeichen klang lauter',
    why: 'An laut und leise hören die Leute, wohin die Musik geht.',
  },
  'weak-hairpin': { headline: 'Die Gabel ändert kaum etwas', why: GRADUAL },
  'reversed-hairpin': { headline: 'Die Gabel geht in die andere Richtung', why: GRADUAL },
  'fermata-long': {
    headline: 'Die Fermate ist sehr lang',
    why: 'Eine Fermate lässt die Musik ruhen. Dauert sie zu lang, geht die Linie verloren.',
  },
  'fermata-short': {
    headline: 'Die Fermate wird kaum gehalten',
    why: 'Eine Fermate lässt die Musik ruhen, bevor sie weitergeht.',
  },
  'slur-broken': {
    headline: 'Der Bogen ist unterbrochen',
    why: 'Unter einem Bogen strömt die Luft weiter, und die Zunge bleibt weg bis zur nächsten Gruppe.',
  },
  'staccato-long': {
    headline: 'Die Staccato-Noten sind lang',
    why: 'Ein Punkt will Platz vor der nächsten Note; der Platz gehört zum Rhythmus.',
  },
  'accent-weak': {
    headline: 'Der Akzent ist kaum zu hören',
    why: 'Ein Akzent zeigt, wo das Gewicht liegt.',
  },
  'breath-unmarked': {
    headline: 'Ein Atmen, wo kein Zeichen steht',
    why: 'Atmen an der falschen Stelle schneidet die Phrase entzwei.',
  },
  'breath-late': {
    headline: 'Das Atmen hält die nächste Note auf',
    why: 'Nimm die Zeit zum Atmen von der Note davor, nie von der Note danach.',
  },
  'note-out-of-tune': {
    headline: 'Ein Ton passt nicht zu den anderen',
    why: 'Einen Ton, der von seinen Nachbarn abweicht, hört man auch in einem großen Register.',
  },
  'tuning-off': {
    headline: 'Das Instrument ist nicht auf A = 440 Hz gestimmt',
    why: 'Nur von einem gemeinsamen Ton aus kann das Register zusammen stimmen.',
  },
  'went-well': { headline: 'Das ist gelungen', why: '' },
};

/**
 * @param finding a finding's kind and, for an accidental, the misreading that explains it
 * @param finding.kind of the finding
 * @param finding.misreading that explains it
 * @returns heading and reason in German; the reason is empty for praise
 *
 * Source: as for the English ones.
 */
export function germanWordsFor(finding: {
  readonly kind: FindingKind;
  readonly misreading?: MisreadingKind | undefined;
}): FindingWords {
  return finding.misreading === undefined ? KINDS[finding.kind] : MISREADINGS[finding.misreading];
}

/** Names of the criteria for reading. */
export const GERMAN_CRITERIA: Record<Criterion, string> = {
  notes: 'Noten',
  rhythm: 'Rhythmus',
  tempo: 'Tempo',
  dynamics: 'Dynamik',
  articulation: 'Artikulation',
  breath: 'Atmung',
  intonation: 'Intonation',
  continuity: 'Durchspielen',
};

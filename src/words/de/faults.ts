import { FAILURES, type FailureTable, isCoded, type LooseCode, type Sayings } from '../../base/index.js';
import { say } from '../say.js';
import { BRIEF_FAULTS_IN_WORDS } from './brief-faults.js';
import { DATES } from './dates.js';
import { NUMBERS } from './numbers.js';

const SAVE = 'die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).';
const RECORD = 'die Aufnahme neu machen oder neu kopieren.';
const SAVE_OR = 'die Aufnahme als WAV oder M4A speichern.';
const COPY = 'die Aufnahme neu kopieren oder neu machen.';

const headerDamaged = (found: string): string =>
  `Der Kopf der WAV-Datei ist beschädigt: ${found}; die Aufnahme neu machen oder neu ausgeben.`;

const FORMATS = {
  wav: 'eine WAV-Datei',
  unknown: 'keine WAV-Datei',
  'no-known-kind': 'keine Aufnahme bekannter Art',
  riff: 'eine RIFF-Datei ohne Ton',
  flac: 'eine FLAC-Datei',
  mp3: 'eine MP3-Datei',
  ogg: 'eine Ogg-Datei',
  mp4: 'eine M4A- oder MP4-Datei',
  '3gp': 'eine 3GP-Datei',
  mov: 'eine QuickTime-Filmdatei',
  'mpeg-ts': 'eine MPEG-Stromdatei',
  aiff: 'eine AIFF-Datei',
  wma: 'eine WMA-Datei',
  rifx: 'eine WAV-Datei mit umgekehrten Bytes (RIFX)',
  wave64: 'eine Wave64-Datei',
  au: 'eine AU-Datei',
  caf: 'eine CAF-Datei',
  wavpack: 'eine WavPack-Datei',
  amr: 'eine AMR-Datei',
  'amr-of-many': 'eine AMR-Datei mit mehreren Kanälen',
  aac: 'eine AAC-Datei',
  midi: 'eine MIDI-Datei',
  matroska: 'eine WebM- oder Matroska-Datei',
  zip: 'ein ZIP-Archiv',
  pdf: 'eine PDF-Datei',
  text: 'eine Textdatei',
} as const;

const CODINGS = { pcm: 'PCM', float: 'Gleitkomma', 'a-law': 'A-law', 'mu-law': 'µ-law' } as const;

const WRITING_FAULTS = {
  'not-allowed': 'nicht erlaubt',
  'read-only': 'der Datenträger ist schreibgeschützt',
  full: 'der Datenträger ist voll',
  'full-for-you': 'der eigene Platz auf dem Datenträger ist voll',
  'too-large': 'Dateien dürfen hier nicht so groß werden',
  'file-in-the-way': 'eine Datei liegt dort, wo der Ordner sein soll',
  'folder-in-the-way': 'ein Ordner liegt dort, wo die Datei sein soll',
  'no-folder': 'der Ordner lässt sich nicht anlegen',
  'long-name': 'der Name ist zu lang',
  'link-in-circle': 'eine Verknüpfung hier zeigt auf sich selbst',
  'files-open': 'es sind schon zu viele Dateien offen',
} as const;

const given = (inputs: readonly string[]): string =>
  inputs.length === 0 ? 'Die genannten Aufnahmen' : inputs.join(', ');
const braced = (fields: readonly string[]): string => fields.map((field) => `{${field}}`).join(', ');
const hexadecimal = (tag: number): string => `0x${tag.toString(16).padStart(4, '0')}`;
const failureSaid = (failure: LooseCode): string =>
  isCoded(FAILURES, failure) ? say(FAULTS_IN_WORDS, failure) : failure.code;

/** Why something could not be done, in German: what was found, and what is needed. */
export const FAULTS_IN_WORDS: Sayings<FailureTable> = {
  ...BRIEF_FAULTS_IN_WORDS,

  'recording-empty': () => `Die Datei ist leer; ${SAVE}`,
  'wav-ends-at-once': ({ bytes }) => `Die WAV-Datei endet nach ${bytes} Bytes; ${RECORD}`,
  'other-format': ({ format }) => `Das ist ${FORMATS[format]}; ${SAVE}`,
  'other-audio': ({ ending }) =>
    `Das ist eine Audiodatei der Art ${ending}, und nur WAV wird gelesen; als WAV speichern.`,
  'wav-without-audio': () => `In der WAV-Datei ist kein Ton; ${RECORD}`,
  'wav-too-short': ({ milliseconds }) => `In der WAV-Datei sind nur ${milliseconds} ms Ton; ${RECORD}`,
  'recording-too-long': ({ minutes }) =>
    `Die Aufnahme ist ${minutes} Minuten lang; auf das Stück kürzen, höchstens 60 Minuten.`,
  'no-recording': ({ format }) =>
    `Das ist ${FORMATS[format]}; nötig ist eine Aufnahme, so wie sie gemacht wurde, oder als WAV gespeichert.`,
  'format-not-read': ({ format }) => `Das ist ${FORMATS[format]}, und das wird nicht gelesen; ${SAVE_OR}`,
  'no-sound-in-it': ({ format }) => `Das ist ${FORMATS[format]}, und darin ist kein Ton zu finden; ${SAVE_OR}`,
  'coding-not-read': ({ format, coding }) => {
    const name = coding === '' ? 'seltenes AAC' : coding;
    return `Das ist ${FORMATS[format]} mit Ton der Art ${name}, und die wird nicht gelesen; ${SAVE_OR}`;
  },
  'sound-not-usual': ({ channels, most, hertz, lowestHertz, highestHertz }) =>
    `Diese Datei nennt ${channels} Kanäle mit ${hertz} Hz; lesbar sind 1 bis ${most} Kanäle mit ${lowestHertz} bis ${highestHertz} Hz.`,
  'recording-damaged': ({ format }) => `Das ist ${FORMATS[format]}, aber beschädigt; ${COPY}`,
  'recording-too-short': ({ milliseconds }) => `Die Aufnahme enthält nur ${milliseconds} ms Ton; ${RECORD}`,
  'recording-over-an-hour': () => 'Die Aufnahme ist länger als eine Stunde; auf das Stück kürzen.',
  'sound-library-missing': () =>
    'Um das zu lesen, ist die Tonbibliothek libasound2 nötig; sie installieren (apt install libasound2) oder die Aufnahme als WAV speichern.',
  'sound-engine-missing': () =>
    'Diese Art Datei ist auf diesem Rechner nicht zu lesen; die Aufnahme als WAV speichern.',
  'decoder-died': ({ format }) =>
    `Das ist ${FORMATS[format]}, und das Lesen ist daran gescheitert, also beschädigt; ${COPY}`,
  'decoder-too-slow': ({ format }) =>
    `Das ist ${FORMATS[format]}, und das Lesen nimmt kein Ende, also beschädigt; ${COPY}`,
  'decoder-too-large': ({ format }) =>
    `Das ist ${FORMATS[format]} und braucht mehr Speicher, als eine Aufnahme soll; auf das Stück kürzen oder neu aufnehmen.`,
  'wav-without-data-chunk': () =>
    'In der WAV-Datei ist kein Ton (kein data-Block); die Aufnahme neu machen oder neu als WAV ausgeben (PCM, 16 oder 24 Bit).',
  'wav-without-format-chunk': () =>
    'Die WAV-Datei sagt nicht, wie ihr Ton gespeichert ist (kein fmt-Block); die Aufnahme neu machen oder neu als WAV ausgeben (PCM, 16 oder 24 Bit).',
  'wav-extension-cut': () => headerDamaged('die erweiterte Beschreibung ist abgeschnitten'),
  'wav-format-cut': () => headerDamaged('die Beschreibung ist abgeschnitten'),
  'wav-rate-zero': () => headerDamaged('er nennt eine Abtastrate von 0 Hz'),
  'wav-no-channels': () => headerDamaged('er nennt 0 Kanäle'),
  'wav-no-bits': () => headerDamaged('er nennt 0 Bit je Abtastwert'),
  'wav-frames-differ': ({ channels, bits, frameBytes, neededBytes }) =>
    headerDamaged(
      `er nennt ${channels} × ${bits} Bit und doch ${frameBytes} Bytes für alle Kanäle statt ${neededBytes}`,
    ),
  'wav-unknown-kind': () => `Der Ton dieser WAV-Datei ist von unbekannter Art (nicht PCM); ${SAVE}`,
  'wav-rate-unread': ({ hertz, lowestHertz, highestHertz }) =>
    `Diese WAV-Datei nennt eine Abtastrate von ${hertz} Hz, lesbar sind ${lowestHertz} bis ${highestHertz} Hz; ${SAVE}`,
  'wav-many-channels': ({ channels, most }) =>
    `Diese WAV-Datei nennt ${channels} Kanäle, lesbar sind 1 bis ${most}; ${SAVE}`,
  'wav-odd-depth': ({ bits, coding }) =>
    `Diese WAV-Datei nennt ${bits} Bit ${CODINGS[coding]}, das ist für WAV nicht üblich; ${SAVE}`,
  'wav-compressed': ({ coding, formatTag }) => {
    const name = coding === '' ? `Art unbekannt, Kennzahl ${hexadecimal(formatTag)}` : coding;
    return `Diese WAV-Datei ist komprimiert (${name}) und nicht zu messen; ${SAVE}`;
  },

  'score-empty': () => 'Die Notendatei ist leer (0 Bytes); nötig ist eine MusicXML-Datei.',
  'score-no-xml': () => 'Die Datei ist weder XML noch eine komprimierte Notendatei; nötig ist eine MusicXML-Datei.',
  'score-too-large': ({ megabytes }) =>
    `Die Notendatei hat ${megabytes} MB; gelesen werden höchstens 16 MB, komprimiert 8 MB.`,
  'score-grows': ({ ratio }) =>
    `Die komprimierte Notendatei wächst auf mehr als das ${ratio}-Fache; das tut keine Musik.`,
  'score-zip-without-score': () =>
    'In der komprimierten Notendatei ist keine MusicXML-Datei; noch einmal als MusicXML ausgeben.',
  'score-zip-names-nothing': () =>
    'In der komprimierten Notendatei fehlt die Datei, die ihr Verzeichnis nennt; noch einmal als MusicXML ausgeben.',
  'score-zip-damaged': () => 'Die komprimierte Notendatei ist beschädigt; noch einmal als MusicXML ausgeben.',
  'score-other-document': ({ root }) => `Das Dokument ist <${root}>; nötig ist <score-partwise> oder <score-timewise>.`,
  'score-not-well-formed': ({ line, said }) => `Die Notendatei ist kein wohlgeformtes XML: Zeile ${line}: ${said}`,
  'score-without-element': () => 'In der Notendatei steht kein XML-Element; nötig ist eine MusicXML-Datei.',
  'score-unsafe-name': () =>
    'Die Notendatei verwendet einen Namen, den MusicXML nicht hat und der nicht sicher zu lesen ist.',
  'score-nests-deep': ({ deepest }) =>
    `Die Notendatei schachtelt ihre Elemente tiefer als ${deepest}; das tut MusicXML nicht.`,
  'score-xml-unread': ({ said }) => `Die Notendatei ist nicht als XML zu lesen: ${said}`,
  'score-defines-types': () => 'Die Notendatei bringt eigene Dokumenttypen mit; MusicXML braucht keine.',
  'score-without-part': () => 'In den Noten ist keine Stimme mit einer Note zu spielen.',
  'part-without-notes': () => 'In der Stimme ist keine Note zu spielen.',
  'part-not-there': ({ wanted, parts }) => `Eine Stimme „${wanted}“ gibt es nicht; es gibt: ${parts.join(', ')}.`,
  'voice-not-there': ({ wanted, voices }) =>
    `In Stimme „${wanted}“ stehen keine Noten; es gibt die Stimmen: ${voices.join(', ')}.`,
  'bar-too-long': ({ bar, quarters, most }) =>
    `Takt ${bar} ist ${NUMBERS.exact(quarters)} Viertel lang; gelesen werden höchstens ${most}.`,
  'note-beyond-instruments': ({ bar, where }) =>
    `Eine Note in Takt ${bar} klingt ${where === 'lower' ? 'tiefer' : 'höher'}, als irgendein Instrument spielt; Oktave und Transposition prüfen.`,
  'too-many-notes': ({ most }) =>
    `Die Stimme hat mit ihren Wiederholungen mehr als ${most} Noten; die Wiederholungen prüfen oder eine kürzere Stimme angeben.`,

  'roster-no-utf8': () => 'Das ist kein UTF-8; als „CSV UTF-8“ speichern.',
  'roster-empty': ({ line, columns }) =>
    `Zeile ${line}: Die Datei ist leer; nötig ist eine Kopfzeile: ${columns.join(',')}.`,
  'roster-many-cells': ({ line, cells, heads }) =>
    `Zeile ${line}: Es gibt ${cells} Zellen und ${heads} Spalten; eine Zelle mit Komma in Anführungszeichen setzen.`,
  'roster-long-cell': ({ line, most }) => `In Zeile ${line} steht eine Zelle mit mehr als ${most} Zeichen; sie kürzen.`,
  'roster-quotes': ({ line }) =>
    `Zeile ${line}: Die Anführungszeichen einer Zelle passen nicht zusammen; sie schließen und die in der Zelle verdoppeln.`,
  'roster-head-empty': ({ line, place }) => `Zeile ${line}: Spalte ${place} hat keinen Kopf; ihr einen geben.`,
  'roster-head-missing': ({ line, columns }) =>
    `Zeile ${line}: Die Spalte „file“ fehlt; es gibt ${columns.join(', ')}.`,
  'roster-head-twice': ({ line }) => `Zeile ${line}: Eine Spalte steht zweimal da.`,
  'roster-no-file': ({ line }) => `Zeile ${line}: Die Zelle unter „file“ ist leer; sie nennt die Aufnahme.`,
  'roster-no-day': ({ line }) =>
    `Zeile ${line}: Die Zelle unter „date“ ist kein Tag; Jahr-Monat-Tag schreiben, etwa 2026-03-02.`,
  'roster-days-unclear': ({ line, days, orders }) =>
    `Zeile ${line}: Ist das der ${days.map((day) => DATES.date(day)).join(' oder der ')}? Dazuschreiben: ${orders.map((order) => `--dates ${order}`).join(' oder ')}.`,
  'roster-several-takes': ({ line, takes }) => `Zeile ${line}: ${takes} Aufnahmen heißen so; den Ordner dazuschreiben.`,
  'roster-take-twice': ({ line, earlierLine }) =>
    `Zeile ${line}: Zeile ${earlierLine} nennt diese Aufnahme schon; eine davon behalten.`,
  'roster-no-such-part': ({ line, scores }) =>
    `Zeile ${line}: Die Zelle unter „part“ nennt keine Noten; es gibt ${scores.join(', ')}.`,
  'marks-heads': ({ columns }) => `In der ersten Zeile müssen die Spalten ${columns.join(', ')} stehen.`,
  'marks-line': ({ line, criteria }) =>
    `Zeile ${line}: Nötig sind eine Aufnahme, wer urteilt, Punkte als Zahl und ein Bereich: ${criteria.join(', ')}.`,
  'names-no-such-field': ({ pattern, field, fields }) =>
    `--names ${pattern}: {${field}} ist kein Feld; es gibt ${braced(fields)}.`,
  'names-stray-sign': ({ pattern, fields }) =>
    `--names ${pattern}: Klammern und Schrägstriche umschließen nur ${braced(fields)}.`,
  'names-field-twice': ({ pattern }) => `--names ${pattern}: Ein Feld darf nur einmal dastehen.`,
  'names-no-field': ({ pattern, fields }) => `--names ${pattern}: Es nennt kein Feld; es gibt ${braced(fields)}.`,
  'names-fields-touch': ({ pattern }) => `--names ${pattern}: Zwischen zwei Feldern muss etwas stehen, etwa _.`,

  'bad-words': ({ said }) => `${said}; takesheet --help zeigt, was es gibt.`,
  'no-score-given': () => 'Die Noten mit --score angeben oder einen Ordner mit Noten mit --scores.',
  'brief-beside-scores': ({ ending }) =>
    `--brief gilt für einmal Noten; neben --scores Dateien mit der Endung ${ending} in den Ordner legen.`,
  'scores-no-folder': () => 'Das ist eine Datei; --scores braucht einen Ordner.',
  'scores-folder-empty': () =>
    'In diesem Ordner sind keine Noten; Dateien mit der Endung .musicxml, .xml oder .mxl hineinlegen.',
  'no-recording-found': ({ inputs }) =>
    `${given(inputs)}: Es gibt keine Aufnahme; Aufnahmen angeben oder einen Ordner mit solchen.`,
  'no-such-takes': ({ inputs }) =>
    `${given(inputs)}: Es gibt keine solche Datei und keinen solchen Ordner; Aufnahmen angeben oder einen Ordner mit solchen.`,
  'take-without-pages': () =>
    'Diese Aufnahme hat ein Ergebnis, aber keine Blätter; review noch einmal ohne --json-only.',
  'nothing-to-hand-out': () => 'In diesem Ordner hat keine Aufnahme Blätter; review noch einmal ohne --json-only.',
  'folder-without-results': () =>
    'In diesem Ordner ist kein Ergebnis einer Aufnahme; den angeben, in den review geschrieben hat.',
  'results-are-blind': () =>
    'Die Ergebnisse in diesem Ordner sind ohne Namen; --blind dazuschreiben oder einen anderen Ordner wählen.',
  'results-show-names': () => 'Die Ergebnisse in diesem Ordner zeigen Namen; für --blind einen anderen Ordner wählen.',
  'sheet-over-result': () => 'Das Blatt käme an die Stelle eines Ergebnisses; einen anderen Namen wählen.',
  'sheet-over-source': () => 'Das Blatt käme an die Stelle dessen, woraus es entsteht; einen anderen Namen wählen.',

  'file-missing': () => 'Die Datei gibt es nicht; den Namen prüfen.',
  'name-not-utf8': () =>
    'Der Name dieser Datei ist nicht in UTF-8 geschrieben, deshalb lässt sie sich nicht öffnen; die Datei umbenennen.',
  'file-forbidden': () => 'Das darf nicht gelesen werden; den Besitzer um Erlaubnis bitten.',
  'link-in-circle': () =>
    'Das ist eine Verknüpfung, die auf sich selbst zeigt; die Datei angeben, auf die sie zeigen soll.',
  'files-open': () =>
    'Es sind schon zu viele Dateien offen; mehr erlauben (ulimit -n 256) oder weniger --jobs angeben und denselben Befehl noch einmal geben.',
  'folder-for-file': () => 'Das ist ein Ordner; nötig ist eine Datei.',
  'no-ordinary-file': () => 'Das ist keine gewöhnliche Datei; nötig ist eine Datei auf einem Datenträger.',
  'file-too-large': ({ megabytes, most }) => `Diese Datei hat ${megabytes} MB; gelesen werden höchstens ${most} MB.`,
  'file-changed': () =>
    'Diese Datei hat sich beim Lesen geändert; warten, bis sie aufgenommen oder kopiert ist, und denselben Befehl noch einmal geben.',
  'cannot-write': ({ why, said }) => {
    const reason = why === 'other' ? `der Datenträger meldet ${said}` : WRITING_FAULTS[why];
    return `Hier ist nicht zu schreiben (${reason}); einen Ordner wählen, in den man schreiben darf.`;
  },
  'folder-leads-away': ({ folder }) =>
    `${folder} darin ist eine Verknüpfung, die anderswohin führt; einen Ordner dorthin legen.`,
  'key-changed': ({ file }) =>
    `${file} ist nicht, wie es geschrieben wurde; den alten Stand zurücklegen oder einen anderen Ordner wählen.`,

  'result-unread': () => 'Das ist kein Ergebnis einer Aufnahme; die Aufnahme noch einmal auswerten.',
  'result-of-others': () =>
    'Das ist kein Ergebnis einer Aufnahme; Ordner oder Dateien angeben, die review geschrieben hat.',
  'result-cut-off': () =>
    'Das ist kein vollständiges JSON, vielleicht wurde es abgeschnitten; die Aufnahmen noch einmal auswerten.',
  'result-of-other-version': ({ version, tool, readVersion }) => {
    const found = version === '' ? 'ein Ergebnis ohne Version' : `ein Ergebnis der Version ${version}`;
    const writer = tool === '' ? '' : `, geschrieben von ${tool}`;
    return `Das ist ${found}${writer}, und gelesen wird Version ${readVersion}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.`;
  },
  'result-against-schema': ({ place }) =>
    `Dieses Ergebnis ist nicht so, wie sein Schema sagt: ${place === '' ? 'ganz oben' : place}; die Aufnahme noch einmal auswerten.`,
  'no-result-found': ({ inputs }) =>
    `${inputs.join(', ')}: Es gibt kein Ergebnis einer Aufnahme; Ordner angeben, die review geschrieben hat.`,
  'no-result-readable': ({ file, failure, more }) =>
    `${file}: ${failureSaid(failure)}${more === 0 ? '' : ` (und ${more} weitere Dateien, die nicht zu lesen sind)`}`,
  'results-without-points': () =>
    'Kein Ergebnis hier hat Punkte; die Aufnahmen mit --brief beurteilen, der Auftrag sagt, was jeder Bereich wert ist.',
  'nobody-to-follow': ({ folders }) =>
    `${folders.join(', ')}: Hier stehen Nummern statt Namen, und keine Nummer kommt an zwei Tagen vor, so dass niemand zu verfolgen ist; Ergebnisse mit Namen angeben, oder die Aufnahmen aller Wochen in einen Ordner auswerten, der die Nummern mit seiner blind-key.csv behält.`,

  'took-too-long': () =>
    'Das Auswerten dauerte länger, als es bei dieser Länge soll; die Aufnahme allein mit größerem --time-limit auswerten oder auf die Etüde kürzen.',
  'too-much-memory': () =>
    'Das Auswerten brauchte mehr Speicher, als es bei dieser Länge soll; die Aufnahme auf die Etüde kürzen oder allein mit größerem --memory-limit auswerten.',
  'worker-died': () =>
    'Das Programm ist an dieser Aufnahme gescheitert und hat mit den anderen weitergemacht; bitte melden.',
  'internal-error': ({ said }) => `Ein Fehler im Programm, nicht in der Datei; bitte melden (${said}).`,
  'told-before': ({ said }) => said,
};

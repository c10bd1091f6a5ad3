import type { OldSentence } from './code-of.js';
import { OLD_RECORDING_FAILURES } from './old-recording-failures.js';

/** Why a take could not be reviewed, as programs said it that kept no codes. */
export const OLD_FAILURES: readonly OldSentence[] = [
  ...OLD_RECORDING_FAILURES,
  {
    code: 'file-missing',
    en: 'there is no such file; check the name',
    de: 'Die Datei gibt es nicht; den Namen prüfen.',
  },
  {
    code: 'file-forbidden',
    en: 'this may not be read; ask its owner for leave to read it',
    de: 'Das darf nicht gelesen werden; den Besitzer um Erlaubnis bitten.',
  },
  {
    code: 'link-in-circle',
    en: 'this is a link that leads back to itself; give the file it should lead to',
    de: 'Das ist eine Verknüpfung, die auf sich selbst zeigt; die Datei angeben, auf die sie zeigen soll.',
  },
  {
    code: 'folder-for-file',
    en: 'this is a folder; a file is needed',
    de: 'Das ist ein Ordner; nötig ist eine Datei.',
  },
  {
    code: 'no-ordinary-file',
    en: 'this is not an ordinary file; a file on a disk is needed',
    de: 'Das ist keine gewöhnliche Datei; nötig ist eine Datei auf einem Datenträger.',
  },
  {
    code: 'file-too-large',
    en: 'this file has {megabytes} MB; at most {most} MB are read',
    de: 'Diese Datei hat {megabytes} MB; gelesen werden höchstens {most} MB.',
  },
  {
    code: 'file-changed',
    en: 'this file changed while it was read; wait until it is recorded or copied, then run the same command again',
    de: 'Diese Datei hat sich beim Lesen geändert; warten, bis sie aufgenommen oder kopiert ist, und denselben Befehl noch einmal geben.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'not-allowed', said: '' },
    en: 'cannot write here (not allowed); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (nicht erlaubt); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'read-only', said: '' },
    en: 'cannot write here (the disk is read-only); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (der Datenträger ist schreibgeschützt); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'full', said: '' },
    en: 'cannot write here (the disk is full); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (der Datenträger ist voll); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'full-for-you', said: '' },
    en: 'cannot write here (the disk is full for you); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (der eigene Platz auf dem Datenträger ist voll); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'too-large', said: '' },
    en: 'cannot write here (files may not become this large here); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (Dateien dürfen hier nicht so groß werden); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'file-in-the-way', said: '' },
    en: 'cannot write here (a file is in the way of the folder); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (eine Datei liegt dort, wo der Ordner sein soll); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'folder-in-the-way', said: '' },
    en: 'cannot write here (a folder is in the way of the file); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (ein Ordner liegt dort, wo die Datei sein soll); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'no-folder', said: '' },
    en: 'cannot write here (the folder cannot be made); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (der Ordner lässt sich nicht anlegen); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'long-name', said: '' },
    en: 'cannot write here (the name is too long); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (der Name ist zu lang); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'link-in-circle', said: '' },
    en: 'cannot write here (a link here leads back to itself); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (eine Verknüpfung hier zeigt auf sich selbst); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'cannot-write',
    facts: { why: 'other' },
    en: 'cannot write here (the disk says {said}); choose a folder you may write to',
    de: 'Hier ist nicht zu schreiben (der Datenträger meldet {said}); einen Ordner wählen, in den man schreiben darf.',
  },
  {
    code: 'result-unread',
    en: 'this is no result of a take; review the take again',
    de: 'Das ist kein Ergebnis einer Aufnahme; die Aufnahme noch einmal auswerten.',
  },
  {
    code: 'result-of-others',
    en: 'this is no result of a take; give folders or files that review has written',
    de: 'Das ist kein Ergebnis einer Aufnahme; Ordner oder Dateien angeben, die review geschrieben hat.',
  },
  {
    code: 'result-cut-off',
    en: 'this is not whole JSON, it may have been cut off; review the takes again',
    de: 'Das ist kein vollständiges JSON, vielleicht wurde es abgeschnitten; die Aufnahmen noch einmal auswerten.',
  },
  {
    code: 'result-of-other-version',
    en: 'this is a result of version {version}, written by {tool}, and version {readVersion} is read; use the program that wrote it, or review the take again with this one',
    de: 'Das ist ein Ergebnis der Version {version}, geschrieben von {tool}, und gelesen wird Version {readVersion}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  },
  {
    code: 'result-of-other-version',
    facts: { tool: '' },
    en: 'this is a result of version {version}, and version {readVersion} is read; use the program that wrote it, or review the take again with this one',
    de: 'Das ist ein Ergebnis der Version {version}, und gelesen wird Version {readVersion}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  },
  {
    code: 'result-of-other-version',
    facts: { version: '' },
    en: 'this is a result that names no version, written by {tool}, and version {readVersion} is read; use the program that wrote it, or review the take again with this one',
    de: 'Das ist ein Ergebnis ohne Version, geschrieben von {tool}, und gelesen wird Version {readVersion}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  },
  {
    code: 'result-of-other-version',
    facts: { version: '', tool: '' },
    en: 'this is a result that names no version, and version {readVersion} is read; use the program that wrote it, or review the take again with this one',
    de: 'Das ist ein Ergebnis ohne Version, und gelesen wird Version {readVersion}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  },
  {
    code: 'result-against-schema',
    facts: { place: '' },
    en: 'this result is not as its schema says, at the top; review the take again',
    de: 'Dieses Ergebnis ist nicht so, wie sein Schema sagt: ganz oben; die Aufnahme noch einmal auswerten.',
  },
  {
    code: 'result-against-schema',
    en: 'this result is not as its schema says, at {place}; review the take again',
    de: 'Dieses Ergebnis ist nicht so, wie sein Schema sagt: {place}; die Aufnahme noch einmal auswerten.',
  },
  {
    code: 'took-too-long',
    en: 'listening to this took longer than a take of its length should; review it by itself with a larger --time-limit, or cut it to the étude',
    de: 'Das Auswerten dauerte länger, als es bei dieser Länge soll; die Aufnahme allein mit größerem --time-limit auswerten oder auf die Etüde kürzen.',
  },
  {
    code: 'too-much-memory',
    en: 'listening to this needed more memory than a take of its length should; cut it to the étude, or review it by itself with a larger --memory-limit',
    de: 'Das Auswerten brauchte mehr Speicher, als es bei dieser Länge soll; die Aufnahme auf die Etüde kürzen oder allein mit größerem --memory-limit auswerten.',
  },
  {
    code: 'worker-died',
    en: 'the program broke down over this take and went on with the others; please report it',
    de: 'Das Programm ist an dieser Aufnahme gescheitert und hat mit den anderen weitergemacht; bitte melden.',
  },
  {
    code: 'internal-error',
    en: 'a fault in the program, not in your file; please report it ({said})',
    de: 'Ein Fehler im Programm, nicht in der Datei; bitte melden ({said}).',
  },
];

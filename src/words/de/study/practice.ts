import type { PracticeStep } from '../../../study/index.js';
import type { PracticeWords } from '../../shapes/study.js';
import { listed } from '../lists.js';
import { beatsIn, tempoIn } from '../tempo.js';

/** What the steps of practice are called. */
export const PRACTICE_TITLES: Readonly<Record<PracticeStep['kind'], string>> = {
  read: 'Lies, bevor du spielst',
  slow: 'Langsam und gebunden',
  tongued: 'Dasselbe, jetzt gestoßen',
  dynamics: 'Wie laut, auf einem Ton',
  'under-tempo': 'Bleib unter dem Tempo',
  'up-to-tempo': 'Hinauf zum Tempo',
  'once-through': 'Einmal ganz durch',
};

/** The steps of practice. */
export const PRACTICE: PracticeWords = {
  read: ({ bars, more, rests }) => {
    const where = bars.length === 0 ? 'jeder Zeile' : `in Takt ${barsToRead(bars, more)}`;
    const clapped = rests ? ' von jedem Takt, in dem eine Pause steht' : ' einmal ganz';
    return `Sag die Noten ${where} laut, jede mit ihrem ganzen Namen. Geh sie dann ohne Ton durch, mit allen Bewegungen wie beim Spielen. Klatsch den Rhythmus${clapped}.`;
  },
  slow: ({ quarterBpm, beat }) =>
    `Metronom auf ${tempoIn(quarterBpm, beat)}. Spiel alles gebunden, je zwei Takte, mit vollem, ruhigem Klang. Geh weiter, wenn zwei Takte dreimal hintereinander stimmen.`,
  tongued: ({ quarterBpm, beat, patternBar }) => {
    const pattern = patternBar === null ? '' : ` Nimm das Muster von Takt ${patternBar} zuerst auf einem einzigen Ton.`;
    return `Zurück auf ${beatsIn(quarterBpm, beat)}. Spiel Zunge, Bögen und Punkte, wie sie dastehen. Die Luft strömt weiter, als wäre noch alles gebunden.${pattern}`;
  },
  dynamics: () =>
    'Spiel die Linie von oben auf einem bequemen Ton, Takt für Takt, bevor du sie auf den Noten spielst. Mach die leiseste und die lauteste Stelle wirklich verschieden.',
  'under-tempo': () =>
    'Diesmal wird unter dem Tempo geübt. Such das schnellste Tempo, bei dem alles leicht bleibt, und halte es.',
  'up-to-tempo': ({ steps, beat }) =>
    `Stell das Metronom in Stufen höher: ${listed(steps.map((bpm) => String(beatsIn(bpm, beat))))}. Geh erst höher, wenn eine Stufe dreimal hintereinander stimmt; wenn sie nicht gelingt, geh eine Stufe zurück, nicht an den Anfang.`,
  'once-through': () =>
    'Spiel vom Anfang bis zum Ende ohne Halt, was auch kommt, und nimm dich dabei auf. Hör es dir mit den Noten an und merk dir zwei Stellen für das nächste Mal vor.',
};

function barsToRead(bars: readonly string[], more: boolean): string {
  return more ? `${bars.join(', ')} und an den anderen Stellen von oben` : listed(bars);
}

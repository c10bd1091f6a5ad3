import type { OldSentence } from './code-of.js';

/** Why there is no number or no judgement, as programs said it that kept no codes. */
export const OLD_REASONS: readonly OldSentence[] = [
  { code: 'note-not-heard', en: 'the note was not heard', de: 'die Note war nicht zu hören' },
  { code: 'note-too-short', en: 'the note is too short', de: 'die Note ist zu kurz' },
  { code: 'note-unsteady', en: 'the note is too short or too unsteady', de: 'die Note ist zu kurz oder zu unruhig' },
  {
    code: 'note-in-noise',
    en: 'the note is lost in the noise of the room',
    de: 'die Note geht im Rauschen des Raums unter',
  },
  {
    code: 'neighbours-not-heard',
    en: 'the notes around it were not heard one after the other',
    de: 'die Noten daneben waren nicht nacheinander zu hören',
  },
  {
    code: 'tempo-unknown-here',
    en: 'too few steady notes around it to know the tempo',
    de: 'zu wenige sichere Noten daneben, um das Tempo zu kennen',
  },
  {
    code: 'fermata-leaves-open',
    en: 'a fermata leaves open when the next note is due',
    de: 'eine Fermate lässt offen, wann die nächste Note kommt',
  },
  { code: 'too-few-in-hairpin', en: 'too few notes were heard in it', de: 'zu wenige Noten daraus waren zu hören' },
  {
    code: 'too-few-under-this-mark',
    en: 'too few notes were heard under this mark',
    de: 'zu wenige Noten unter diesem Zeichen waren zu hören',
  },
  {
    code: 'too-few-under-mark',
    en: 'too few notes were heard under {mark}',
    de: 'zu wenige Noten unter {mark} waren zu hören',
  },
  { code: 'no-note-heard', en: 'no note was heard', de: 'kein Ton war zu hören' },
  {
    code: 'too-few-silences',
    en: 'too few notes are followed by silence to hear the room',
    de: 'auf zu wenige Noten folgt Stille, um den Raum zu hören',
  },
  {
    code: 'decay-hidden',
    en: 'after the notes the sound is gone too soon, or lost in noise, to hear the room',
    de: 'nach den Noten ist der Klang zu früh weg oder im Rauschen verloren, um den Raum zu hören',
  },
  { code: 'too-few-pitches', en: 'too few notes with a steady pitch', de: 'zu wenige Töne mit ruhiger Tonhöhe' },
  { code: 'too-few-bars', en: 'too few bars with steady notes', de: 'zu wenige Takte mit sicheren Noten' },
  {
    code: 'too-few-loud-and-soft',
    en: 'too few notes that come back loud and soft',
    de: 'zu wenige Töne, die laut und leise wiederkehren',
  },
  {
    code: 'loud-and-soft-alike',
    en: 'loud and soft are too much alike',
    de: 'laut und leise sind einander zu ähnlich',
  },
  {
    code: 'registers-unknown',
    en: 'too few notes to know how loud the instrument is by itself in each register',
    de: 'zu wenige Noten, um zu wissen, wie laut das Instrument in jeder Lage von selbst ist',
  },
  {
    code: 'other-part',
    en: 'what was played does not fit this part',
    de: 'was gespielt wurde, passt nicht zu diesen Noten',
  },
  {
    code: 'nothing-clear',
    en: 'no playing could be heard clearly enough',
    de: 'kein Spiel war deutlich genug zu hören',
  },
  { code: 'not-reviewed', en: 'the take was not reviewed', de: 'die Aufnahme wurde nicht beurteilt' },
  {
    code: 'brief-all-slurred',
    en: 'not judged: all slurred for practice',
    de: 'nicht beurteilt: zum Üben alles gebunden',
  },
  {
    code: 'brief-under-tempo',
    en: 'not judged: below the tempo for practice',
    de: 'nicht beurteilt: zum Üben unter dem Tempo',
  },
  {
    code: 'brief-leaves-out',
    en: 'not judged: the brief leaves it out',
    de: 'nicht beurteilt: Der Auftrag lässt es aus',
  },
  {
    code: 'level-moved',
    en: 'not judged: the recorder moved its level',
    de: 'nicht beurteilt: Der Rekorder hat den Pegel verändert',
  },
  { code: 'no-level-change', en: 'no change of level to measure', de: 'kein Wechsel der Lautstärke zu messen' },
  { code: 'no-groups-or-rests', en: 'no groups or rests to measure', de: 'keine Gruppen oder Pausen zu messen' },
  { code: 'no-slur-or-staccato', en: 'no slur or staccato to measure', de: 'kein Bogen oder Staccato zu messen' },
  { code: 'no-breath-marked', en: 'no breath marked', de: 'kein Atemzeichen' },
  {
    code: 'no-breath-heard',
    en: 'no marked breath could be heard: the notes around them were not all played',
    de: 'kein Atmen an den Zeichen zu hören: Nicht alle Noten daneben wurden gespielt',
  },
  {
    code: 'not-kept-then',
    en: 'the program that wrote this result did not keep it',
    de: 'das Programm, das dieses Ergebnis schrieb, hat es nicht festgehalten',
  },
];

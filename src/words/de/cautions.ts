import type { CAUTIONS, Sayings } from '../../base/index.js';
import { listed } from './lists.js';
import { NUMBERS } from './numbers.js';

const channelName = (channel: number, of: number): string =>
  of === 2 ? `${channel === 1 ? 'linker' : 'rechter'} Kanal` : `Kanal ${channel}`;

const size = (semitones: number): string => {
  if (semitones === 12) return 'eine Oktave';
  return semitones === 1 ? 'einen Halbton' : `${semitones} Halbtöne`;
};

/** What a reader is to know of a recording, in German. */
export const CAUTIONS_IN_WORDS: Sayings<typeof CAUTIONS> = {
  'length-left-open': () =>
    'Der Rekorder hat die Länge der Aufnahme nicht festgehalten; sie wurde bis zum Ende der Datei gelesen.',
  'breaks-off': ({ announcedSeconds, heldSeconds }) =>
    `Die Datei bricht ab: Sie sollte ${NUMBERS.fixed(announcedSeconds, 1)} s lang sein und ist ${NUMBERS.fixed(heldSeconds, 1)} s lang.`,
  'damaged-samples': ({ samples }) =>
    samples === 1
      ? '1 beschädigter Abtastwert wurde durch Stille ersetzt.'
      : `${samples} beschädigte Abtastwerte wurden durch Stille ersetzt.`,
  'packets-lost': ({ packets, seconds }) =>
    `${packets === 1 ? '1 beschädigtes Stück wurde' : `${packets} beschädigte Stücke wurden`} durch einen Augenblick Stille ersetzt, bei ${listed(seconds.map((second) => NUMBERS.fixed(second, 1)))} s: Was dort gehört wurde, ist unsicher.`,
  'channels-empty': ({ channels, of }) =>
    `Leer und darum weggelassen: ${channels.map((channel) => channelName(channel, of)).join(', ')}.`,
  'channels-cancel': ({ usedChannel, of }) =>
    `Die Kanäle löschen einander aus (einer ist umgepolt); verwendet wurde nur: ${channelName(usedChannel, of)}.`,
  'channels-cancel-at-times': ({ usedChannel, of }) =>
    `Die Kanäle löschen einander zum Teil aus; verwendet wurde nur: ${channelName(usedChannel, of)}.`,
  'channels-noisier': ({ usedChannel, of }) =>
    `Zusammen rauschen die Kanäle mehr als einer allein; verwendet wurde nur: ${channelName(usedChannel, of)}.`,
  'channels-unequal': ({ usedChannel, of }) =>
    `Die Kanäle sind sehr verschieden laut; verwendet wurde nur: ${channelName(usedChannel, of)}.`,
  'damaged-from': ({ heldSeconds }) =>
    `Die Datei ist nach ${NUMBERS.fixed(heldSeconds, 1)} s beschädigt oder abgeschnitten; gehört wurde nur, was davor steht.`,
  'speech-coding': () =>
    'Die Aufnahme ist so gespeichert, wie es für Sprache am Telefon gedacht ist: Leise Töne und Tonanfänge können darin verloren gehen.',
  'narrow-band': ({ kilohertz }) =>
    `Die Aufnahme enthält nichts über ${NUMBERS.fixed(kilohertz, 1)} kHz, wie ein Telefongespräch: Leise Töne und Tonanfänge können darin verloren gehen.`,
  clips: () => 'Die Aufnahme ist stellenweise zu laut und übersteuert: Laute Töne lassen sich nicht genau vergleichen.',
  noisy: () => 'In der Aufnahme ist viel Rauschen: Leise Töne können darin untergehen.',
  'rings-long': () =>
    'Der Raum hallt lang nach und füllt die Lücken zwischen den Noten: Gebundene und kurze Noten sind nicht sicher zu unterscheiden.',
  echoes: () =>
    'Der Raum wirft ein Echo zurück, und Noten klingen in die folgenden hinein: Was zu einzelnen Noten steht, ist zum Hinhören, noch nicht zum Üben.',
  'sounds-elsewhere': ({ semitones }) => {
    const guess =
      Math.abs(semitones) === 12 ? '' : ' Vielleicht wurde aus den Noten für ein anderes Instrument gespielt.';
    const where = semitones > 0 ? 'höher' : 'tiefer';
    return `Die ganze Aufnahme klingt ${size(Math.abs(semitones))} ${where} als diese Noten.${guess} Alles andere hier ist in dieser Tonhöhe verglichen.`;
  },
  'level-moved': () =>
    'Der Rekorder hat den Pegel wohl selbst verändert. Darum wird die Lautstärke nicht beurteilt. Schalte nächstes Mal die automatische Aussteuerung aus.',
};

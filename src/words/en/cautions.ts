import type { CAUTIONS, Sayings } from '../../base/index.js';
import { listed } from './lists.js';

const channelName = (channel: number, of: number): string =>
  of === 2 ? `the ${channel === 1 ? 'left' : 'right'} channel` : `channel ${channel}`;

/** What a reader is to know of a recording, in English. */
export const CAUTIONS_IN_WORDS: Sayings<typeof CAUTIONS> = {
  'length-left-open': () =>
    'the recorder did not write the length of the recording; it was read to the end of the file',
  'breaks-off': ({ announcedSeconds, heldSeconds }) =>
    `the file breaks off: it should hold ${announcedSeconds.toFixed(1)} s and holds ${heldSeconds.toFixed(1)} s`,
  'damaged-samples': ({ samples }) =>
    `${samples} damaged ${samples === 1 ? 'sample was' : 'samples were'} replaced by silence`,
  'packets-lost': ({ packets, seconds }) =>
    `${packets} damaged ${packets === 1 ? 'piece was' : 'pieces were'} replaced by a moment of silence, at ${listed(seconds.map((second) => second.toFixed(1)))} s: do not trust what is said of the notes there`,
  'channels-empty': ({ channels, of }) => {
    const names = channels.map((channel) => channelName(channel, of)).join(', ');
    return channels.length > 1 ? `${names} are empty and were left out` : `${names} is empty and was left out`;
  },
  'channels-cancel': ({ usedChannel, of }) =>
    `the channels cancel each other (one is upside down); only ${channelName(usedChannel, of)} was used`,
  'channels-cancel-at-times': ({ usedChannel, of }) =>
    `the channels partly cancel each other; only ${channelName(usedChannel, of)} was used`,
  'channels-noisier': ({ usedChannel, of }) =>
    `the channels together are noisier than one of them; only ${channelName(usedChannel, of)} was used`,
  'channels-unequal': ({ usedChannel, of }) =>
    `the channels are of very different loudness; only ${channelName(usedChannel, of)} was used`,
  'damaged-from': ({ heldSeconds }) =>
    `the file is damaged or cut off after ${heldSeconds.toFixed(1)} s; only what stands before it was heard`,
  'speech-coding': () =>
    'The recording was kept in a coding made for speech on the telephone: soft notes and attacks may be lost in it.',
  'narrow-band': ({ kilohertz }) =>
    `The recording keeps nothing above ${kilohertz.toFixed(1)} kHz, as a telephone call does: soft notes and attacks may be lost in it.`,
  clips: () => 'The recording is too loud in places and distorts: loud notes cannot be compared exactly.',
  noisy: () => 'There is much noise in the recording: soft notes may be lost in it.',
  'rings-long': () =>
    'The room rings long: gaps between notes fill up, so slurs and short notes are not told apart surely.',
  echoes: () =>
    'The room sends back an echo, so notes sound into those after them: what is told of single notes is to watch, not yet to fix.',
  'sounds-elsewhere': ({ semitones }) => {
    const isOctave = Math.abs(semitones) === 12;
    const size = isOctave ? 'an octave' : `${Math.abs(semitones)} semitones`;
    const where = semitones > 0 ? 'higher' : 'lower';
    const guess = isOctave ? '' : ' It may have been read from the part for another instrument.';
    return `The whole take sounds ${size} ${where} than this part.${guess} Everything else here is compared at that pitch.`;
  },
  'level-moved': () =>
    'The recorder seems to have changed its level by itself. So dynamics are not judged. Next time, switch the automatic level off.',
};

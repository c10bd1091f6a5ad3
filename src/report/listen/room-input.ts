import type { EngravedPart } from '../../engrave/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';

/** What is known of a take's sound beside its result; it is kept in a small file beside the sound. */
export interface SoundFacts {
  /** of the file that can be heard */
  readonly durationSeconds: number;
  /** dBFS as on the page, of the stretch of `levelHopSeconds` that begins at `i * levelHopSeconds`; null for silence */
  readonly levelsDb: readonly (number | null)[];
  readonly levelHopSeconds: number;
  /**
   * K-weighted power (dB, without the offset of −0.691) of stretches of 0.1 s; four neighbours make a block of EBU R 128.
   * null for silence.
   */
  readonly kWeightedDb: readonly (number | null)[];
}

/** One take of the room. */
export interface RoomTake {
  /** of its documents, without ending: with blind results this tells nobody's name */
  readonly name: string;
  readonly result: TakeResult;
  /** address of its sound, relative to the page; null where there is nothing to hear */
  readonly sound: string | null;
  /** null exactly where `sound` is */
  readonly facts: SoundFacts | null;
  /** address of its pages (PDF), relative to the room; null where there are none */
  readonly pages: string | null;
}

/** A part that takes of the room were played from. */
export interface RoomPart {
  /** the score's file as results name it (`result.score.file`) */
  readonly file: string;
  readonly part: Part;
  /** null when it cannot be engraved: then bars are numbered boxes */
  readonly engraved: EngravedPart | null;
  /** quarters a minute the brief asks for; null when neither brief nor part does */
  readonly targetBpm: number | null;
}

/** Everything the listening room shows. */
export interface RoomInput {
  readonly language: TakeResult['language'];
  /** names of players are not to be shown */
  readonly blind: boolean;
  readonly parts: readonly RoomPart[];
  /** in the order of the section sheet */
  readonly takes: readonly RoomTake[];
}

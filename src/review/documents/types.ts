import type { EncodedSound } from '../../encode/index.js';
import type { EngravedPart } from '../../engrave/index.js';
import type { Loudness } from '../../report/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import type { Who } from '../types.js';
import type { DocumentWishes } from './wishes.js';

/** A take that was reviewed, with all that its documents are made from. */
export interface Review {
  /** that its documents are written under; null where nobody said */
  readonly name: string | null;
  readonly result: TakeResult;
  /** the part it was reviewed against */
  readonly part: Part;
  readonly loudness: Loudness;
  readonly who: Who;
  /** gives the part laid out; null when it cannot be engraved */
  readonly engraved: () => Promise<EngravedPart | null>;
  /** gives the recording as a file to be heard, made once; null unless a document that is wanted needs it */
  readonly sound: (() => EncodedSound) | null;
}

/** Where documents of takes are: those that are read, and those of the listening room. */
export type DocumentFolder = 'takes' | 'listen/sound';

/** One kind of file that is written for a take. */
export interface TakeDocument {
  /** below the one for results */
  readonly folder: DocumentFolder;
  /** of the file's name, without the dot; no two documents share one */
  readonly ending: string;
  /** whether it is to be written */
  readonly wanted: (wishes: DocumentWishes) => boolean;
  /** whether it is made from the recording itself: then that is held until it is made */
  readonly hears: boolean;
  /** what its bytes depend on beside what all documents of a take depend on; a file made for something else is made anew */
  readonly madeFor: (wishes: DocumentWishes) => string;
  /** makes the file's bytes; the same review and wishes give the same bytes */
  readonly make: (review: Review, wishes: DocumentWishes) => Promise<Uint8Array>;
}

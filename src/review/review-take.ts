import { type Language, sha256 } from '../base/index.js';
import type { Brief } from '../brief/index.js';
import { decodeTake } from '../decode/index.js';
import { encodeSound } from '../encode/index.js';
import { engravePart } from '../engrave/index.js';
import { judgeTake } from '../judge/index.js';
import { measureTake } from '../measure/index.js';
import { type TakeResult, toTakeResult } from '../result/index.js';
import type { Part } from '../score/index.js';
import { chooseEtude } from './choose-etude.js';
import { wantedDocuments } from './documents/documents.js';
import type { DocumentFolder, Review } from './documents/types.js';
import type { DocumentWishes } from './documents/wishes.js';
import { hearColour } from './hear-colour.js';
import { hearTuningAgain } from './hear-tuning-again.js';
import type { Engraving, Etude, Tool, Who } from './types.js';

/** One take, all that its review depends on, and what is wanted of it. */
export interface TakeRequest extends DocumentWishes {
  /** the take's file whole, or what gives it, asked once: then it is not held longer than it is needed */
  readonly bytes: Uint8Array | (() => Uint8Array);
  /** their SHA-256, where it is known already */
  readonly sha256?: string;
  /** the take's file name, without folders */
  readonly file: string;
  /** the name its documents are written under; without it pages lead to no listening room */
  readonly name?: string;
  readonly who: Who;
  /** whether player and file are numbers that stand for names */
  readonly blind?: boolean;
  readonly part: Part;
  /** the teacher's brief, already applied to the part; null without one */
  readonly brief?: Brief | null;
  /** the part for engraving, without it pages have no excerpts */
  readonly musicXml?: string | null;
  readonly score: { readonly file: string; readonly sha256: string };
  /** other études that may have been played instead */
  readonly others?: readonly Etude[];
  readonly tool: Tool;
  /** of the pages and of what the result tells; English when it is left out */
  readonly language?: Language;
  /** asked for the étude laid out when pages need it; without it that is done here */
  readonly engrave?: Engraving;
}

/** One file to be written for a take. */
export interface MadeDocument {
  /** below the one for results */
  readonly folder: DocumentFolder;
  /** of its name, without the dot */
  readonly ending: string;
  readonly bytes: Uint8Array;
  /** as the list of documents has it */
  readonly madeFor: string;
}

/** What the review of one take gives. */
export interface ReviewedTake {
  readonly result: TakeResult;
  /** those that are wanted, in the order of the list of documents */
  readonly documents: readonly MadeDocument[];
}

/**
 * Reviews one take from its bytes to its documents. Touches neither disk nor clock: the same request gives the same bytes.
 *
 * @param request the take, the part and what to write
 * @param onDecoded told how long the take is, in seconds, before it is listened to
 * @returns the result, and the documents that are wanted
 * @throws InputError when the bytes are not a recording that can be read
 */
export async function reviewTake(
  request: TakeRequest,
  onDecoded: (seconds: number) => void = () => {},
): Promise<ReviewedTake> {
  const wanted = wantedDocuments(request);
  const hears = wanted.some((document) => document.hears);
  const review = await judged(request, hears, onDecoded);
  const documents: MadeDocument[] = [];
  for (const { folder, ending, make, madeFor } of wanted) {
    documents.push({ folder, ending, bytes: await make(review, request), madeFor: madeFor(request) });
  }
  return { result: review.result, documents };
}

/** All but the documents. What was heard is given up at its end, and the recording unless a document needs it. */
async function judged(request: TakeRequest, hears: boolean, onDecoded: (seconds: number) => void): Promise<Review> {
  const { file, who, tool, language = 'en', blind = false } = request;
  const bytes = typeof request.bytes === 'function' ? request.bytes() : request.bytes;
  const take = await decodeTake(bytes);
  onDecoded(take.samples.length / take.sampleRateHz);
  const { etude, heard } = chooseEtude(take, [
    {
      part: request.part,
      brief: request.brief ?? null,
      score: request.score,
      musicXml: request.musicXml ?? null,
    },
    ...(request.others ?? []),
  ]);
  const { part, brief, score } = etude;
  const { features, alignment } = heard;
  const once = measureTake({ take, features, part, alignment });
  const asked = { part, alignment, ...(brief === null ? {} : { brief }) };
  const coloured = await hearColour(take, { ...asked, measurements: once });
  const measurements = await hearTuningAgain(take, { ...asked, measurements: coloured });
  const judgement = judgeTake({ ...asked, measurements });
  const result = toTakeResult({
    ...{ tool, file, sha256: request.sha256 ?? sha256(bytes), ...who, blind },
    ...{ take, score, part, alignment, measurements, judgement, language },
  });
  const loudness = {
    hopSeconds: features.levelHopSeconds,
    levelDb: features.power.map((power) => 10 * Math.log10(power)),
  };
  const { engrave = engraveHere } = request;
  const engraved = () => engrave(etude);
  return {
    name: request.name ?? null,
    result,
    part,
    loudness,
    engraved,
    who,
    sound: hears ? madeOnce(() => encodeSound(take)) : null,
  };
}

function madeOnce<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

const engraveHere: Engraving = async ({ musicXml = null }) => (musicXml === null ? null : engravePart(musicXml));

import type { Language } from '../base/index.js';
import type { Brief } from '../brief/index.js';
import { decodeTake } from '../decode/index.js';
import { judgeTake } from '../judge/index.js';
import { measureTake } from '../measure/index.js';
import {
  drawListeningPage,
  drawTakeReport,
  engravePart,
  type PaperSize,
  type TakeResult,
  toTakeResult,
} from '../report/index.js';
import type { Part } from '../score/index.js';
import { choosePiece } from './choose-piece.js';
import { pageDate } from './page-date.js';
import { playerAndDate } from './plan/player-and-date.js';
import { sha256 } from './sha256.js';
import type { Engraving, Piece, Tool, Who } from './types.js';

/** One take and all that its review depends on. */
export interface TakeRequest {
  /** the take's file whole, or what gives it, asked once: then it is not held longer than it is needed */
  readonly bytes: Uint8Array | (() => Uint8Array);
  /** their SHA-256, where it is known already */
  readonly sha256?: string;
  /** the take's file name, without folders */
  readonly file: string;
  /** who played and when; read from the file name when it is left out */
  readonly who?: Who;
  /** whether player and file are numbers that stand for names */
  readonly blind?: boolean;
  readonly part: Part;
  /** the teacher's brief, already applied to the part; null without one */
  readonly brief?: Brief | null;
  /** the part for engraving, without it pages have no excerpts */
  readonly musicXml?: string | null;
  readonly score: { readonly file: string; readonly sha256: string };
  /** other pieces that may have been played instead */
  readonly others?: readonly Piece[];
  readonly tool: Tool;
  readonly paper: PaperSize;
  /** of the page and of what the result tells; English when it is left out */
  readonly language?: Language;
  readonly withPdf: boolean;
  /** whether a page to listen to is wanted as well */
  readonly listen?: boolean;
  /** asked for the piece laid out when pages need it; without it that is done here */
  readonly engrave?: Engraving;
}

/** What the review of one take gives. */
export interface ReviewedTake {
  readonly result: TakeResult;
  /** the report's pages, null when none were asked for */
  readonly pdf: Uint8Array | null;
  /** the page to listen to, null when none was asked for */
  readonly html: string | null;
}

/**
 * Reviews one take from its bytes to its report. Touches neither disk nor clock: the same request gives the same bytes.
 *
 * @param request the take, the part and what to write
 * @param onDecoded told how long the take is, in seconds, before it is listened to
 * @returns the result document and the report
 * @throws InputError when the bytes are not a recording that can be read
 *
 * Source: definition.
 */
export async function reviewTake(
  request: TakeRequest,
  onDecoded: (seconds: number) => void = () => {},
): Promise<ReviewedTake> {
  const { take, who, ...pages } = await judged(request, onDecoded);
  const pdf = request.withPdf
    ? await drawTakeReport({ ...pages, paper: request.paper, creationDate: pageDate([who.date]) })
    : null;
  const html = take !== null ? await drawListeningPage({ ...pages, take }) : null;
  return { result: pages.result, pdf, html };
}

/** All but the pages. What was heard is given up at its end, and the recording unless it is to be listened to. */
async function judged(request: TakeRequest, onDecoded: (seconds: number) => void) {
  const { file, tool, language = 'en', blind = false } = request;
  const bytes = typeof request.bytes === 'function' ? request.bytes() : request.bytes;
  const take = await decodeTake(bytes);
  onDecoded(take.samples.length / take.sampleRateHz);
  const { piece, heard } = choosePiece(take, [
    {
      part: request.part,
      brief: request.brief ?? null,
      score: request.score,
      musicXml: request.musicXml ?? null,
    },
    ...(request.others ?? []),
  ]);
  const { part, brief, score } = piece;
  const { features, alignment } = heard;
  const measurements = measureTake({ take, features, part, alignment });
  const judgement = judgeTake({ part, alignment, measurements, ...(brief === null ? {} : { brief }) }, language);
  const who = request.who ?? playerAndDate(file.replace(/\.[^.]*$/, ''));
  const result = toTakeResult({
    ...{ tool, file, sha256: request.sha256 ?? sha256(bytes), ...who, blind },
    ...{ take, score, part, alignment, measurements, judgement, language },
  });
  const loudness = {
    hopSeconds: features.levelHopSeconds,
    levelDb: features.power.map((power) => 10 * Math.log10(power)),
  };
  const { engrave = engraveHere } = request;
  const engraved = () => engrave(piece);
  return { result, part, loudness, engraved, who, take: request.listen === true ? take : null };
}

const engraveHere: Engraving = async ({ musicXml = null }) => (musicXml === null ? null : engravePart(musicXml));

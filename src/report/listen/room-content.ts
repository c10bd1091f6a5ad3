import { sha256 } from '../../base/index.js';
import type { OpenFont } from '../../page/index.js';
import type { TakeResult } from '../../result/index.js';
import type { Part } from '../../score/index.js';
import type { Words } from '../../words/index.js';
import type { ReportSheet } from '../report-sheet.js';
import { layOutPart } from './lay-out-part.js';
import type { LaidOut } from './part-html.js';
import type { PartData, RoomData, TakeData, TakeHead } from './room-data.js';
import type { RoomInput, RoomPart, RoomTake } from './room-input.js';
import { takeData } from './take-data.js';
import { findingId, type NamedTake } from './take-section.js';
import { writtenPart } from './written-part.js';

/** Everything the room is made of, before it becomes HTML. */
export interface RoomContent {
  readonly data: RoomData;
  readonly takes: readonly NamedTake[];
  /** null for a take that was not reviewed */
  readonly takeData: readonly (TakeData | null)[];
  readonly parts: readonly { readonly part: Part; readonly laidOut: LaidOut }[];
}

/**
 * @param input takes and parts
 * @param sheet for widths and words
 * @param music the opened music face
 * @returns what the room shows and what its script is handed
 */
export function roomContent(input: RoomInput, sheet: ReportSheet, music: OpenFont): RoomContent {
  const { words } = sheet;
  const labels = labelsOf(input.takes, words);
  const takes = input.takes.map((take, number) => ({ take, number, ...(labels[number] as (typeof labels)[number]) }));
  const partOf = (take: RoomTake): number => input.parts.findIndex(({ file }) => isOf(file, take));
  const datas = new Map<number, TakeData>();
  const parts = input.parts.map((roomPart) => {
    const here = takes.filter(({ take }) => isOf(roomPart.file, take));
    const laidOut = layOutPart(
      sheet,
      roomPart,
      here.map(({ take }) => take),
    );
    for (const [i, { take, number }] of here.entries()) {
      const marks = laidOut.marks[i] ?? { wide: [], narrow: [] };
      datas.set(
        number,
        takeData(take, roomPart.part, marks, (finding) => findingId(number, take.result, finding), music),
      );
    }
    return { part: roomPart.part, laidOut, data: partData(roomPart, laidOut) };
  });
  return {
    takes,
    parts,
    takeData: takes.map(({ number }) => datas.get(number) ?? null),
    data: {
      id: idOf(input),
      blind: input.blind,
      words: words.room.script,
      parts: parts.map(({ data }) => data),
      takes: takes.map((named) => headOf(named, partOf(named.take))),
    },
  };
}

const isOf = (file: string, { result }: RoomTake): boolean =>
  result.outcome === 'reviewed' && result.score.file === file;

/** Marks are kept in the browser under it: the same takes are the same room. */
function idOf({ takes }: RoomInput): string {
  return sha256(new TextEncoder().encode(takes.map(({ name }) => name).join('\n'))).slice(0, 16);
}

/** The player; the take where the player is unknown or has several takes of one day. */
function labelsOf(takes: readonly RoomTake[], words: Words): { readonly label: string; readonly day: string }[] {
  const plain = takes.map(({ name, result: { take } }) => ({
    label: take.player ?? name,
    day: take.date === null ? '' : words.date(take.date),
  }));
  return plain.map(({ label, day }, i) => {
    const twin = plain.some((other, k) => k !== i && other.label === label && other.day === day);
    return { label: twin ? (takes[i]?.name ?? label) : label, day };
  });
}

function headOf({ take, label, day }: NamedTake, part: number): TakeHead {
  const { name, result, sound, pages } = take;
  return {
    ...{ name, label, day, sound, pages },
    date: result.take.date ?? '',
    player: (result.take.player ?? '').normalize('NFC').toLowerCase(),
    part: part < 0 ? null : part,
    met: metOf(result),
  };
}

function metOf({ criteria }: TakeResult): Record<string, number> {
  return Object.fromEntries(
    criteria.flatMap(({ criterion, of, met, judged }) =>
      judged === false || of === undefined || met === undefined || of === 0
        ? []
        : [[criterion, Math.round((1000 * met) / of) / 1000]],
    ),
  );
}

function partData({ part, targetBpm }: RoomPart, { data }: LaidOut): PartData {
  return {
    bars: part.bars.map((bar) => [
      bar.bar,
      bar.barIndex,
      bar.pass,
      thousandth(bar.startQuarters),
      thousandth(bar.lengthQuarters),
      clickQuarters(bar),
    ]),
    onsets: part.notes.map(({ onsetQuarters }) => thousandth(onsetQuarters)),
    layouts: data,
    written: writtenPart(part, targetBpm),
  };
}

/** Compound metres are counted in threes. Source: common practice. */
function clickQuarters({ beats, beatType }: Part['bars'][number]): number {
  const unit = 4 / beatType;
  return beatType >= 8 && beats > 3 && beats % 3 === 0 ? 3 * unit : unit;
}

const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

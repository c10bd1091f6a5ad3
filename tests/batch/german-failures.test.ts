import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FAILURES, type Failure } from '../../src/base/index.js';
import { diskFault } from '../../src/batch/disk/disk-fault.js';
import { readWhole } from '../../src/batch/disk/read-whole.js';
import { writeWhole } from '../../src/batch/disk/write-whole.js';
import { failureOf } from '../../src/batch/failures/failure-of.js';
import { lossOf } from '../../src/batch/failures/loss-of.js';
import { failureTold } from '../../src/batch/history/old-sentences/failure-told.js';
import { readDocument } from '../../src/batch/history/read-document.js';
import { readHistory } from '../../src/batch/history/read-history.js';
import { findTakes } from '../../src/batch/plan/find-takes.js';
import { readResult } from '../../src/batch/results/read-result.js';
import { decodeWav } from '../../src/decode/index.js';
import { failureSaid } from '../../src/words/index.js';
import { ascii, chunk, type FormatFields, formatChunk, ramp16, riff } from '../decode/wav-bytes.js';
import { ENGLISH_WORDS as ENGLISH } from '../helpers/english-words.js';

let root = '';
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'failures-'));
});
afterAll(() => rmSync(root, { recursive: true }));

/** Why something fails. */
function faultOf(act: () => unknown): Failure {
  try {
    act();
  } catch (error) {
    return failureOf('x.wav', error).fault;
  }
  throw new Error('nothing failed');
}

const decoding = (bytes: Uint8Array) => faultOf(() => decodeWav(bytes));
const data = chunk('data', ramp16(1000));
const header = (fields: FormatFields) => decoding(riff([formatChunk(fields), data]));
const beginning = (head: readonly number[]) => decoding(Uint8Array.from([...head, ...Array<number>(60).fill(0)]));

const FIELDS: readonly FormatFields[] = [
  ...[{ rate: 0 }, { rate: 1 }, { channels: 0 }, { channels: 9 }, { blockAlign: 3 }, { bits: 0 }, { bits: 64 }],
  ...[{ tag: 3 }, { tag: 7 }, { tag: 2, bits: 4 }, { tag: 0x11, bits: 4 }, { tag: 0x55, bits: 0 }, { tag: 0x1234 }],
  ...[{ tag: 0xfffe }, { tag: 0xfffe, extra: Array<number>(24).fill(7) }],
];

/** Beginnings of files that are no WAV. Source: the formats' own specifications. */
const HEADS: readonly (readonly number[])[] = [
  ...['fLaC', 'ID3\x04', 'OggS', 'RIFX', '.snd', 'caff', 'wvpk', '#!AMR', 'MThd', 'PK\x03\x04', '%PDF'].map(ascii),
  [0, 0, 0, 0x20, ...ascii('ftypM4A ')],
  [...ascii('FORM'), 0, 0, 1, 0, ...ascii('AIFF')],
  [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11],
  [...ascii('riff'), 0x2e, 0x91, 0xcf, 0x11],
  [0x1a, 0x45, 0xdf, 0xa3],
  [0xff, 0xf1, 0x50, 0x80],
  [...ascii('RIFF'), 0, 1, 0, 0, ...ascii('AVI ')],
  [0, 1, 2, 3],
];

/** What is said of files that are no WAV files; tests/decode/ makes the program say so. */
const APART: readonly Failure[] = [
  { code: 'no-recording', facts: { format: 'no-known-kind' } },
  { code: 'format-not-read', facts: { format: 'amr-of-many' } },
  { code: 'no-sound-in-it', facts: { format: 'mov' } },
  { code: 'coding-not-read', facts: { format: 'mp4', coding: 'AC-3' } },
  { code: 'coding-not-read', facts: { format: 'caf', coding: '' } },
  {
    code: 'sound-not-usual',
    facts: { channels: 9, most: 8, hertz: 44_100, lowestHertz: 8000, highestHertz: 192_000 },
  },
  { code: 'recording-damaged', facts: { format: '3gp' } },
  { code: 'recording-damaged', facts: { format: 'mpeg-ts' } },
  { code: 'recording-too-short', facts: { milliseconds: 40 } },
  { code: 'recording-over-an-hour', facts: {} },
  { code: 'sound-library-missing', facts: {} },
  { code: 'sound-engine-missing', facts: {} },
  { code: 'decoder-died', facts: { format: 'ogg' } },
  { code: 'decoder-too-slow', facts: { format: 'matroska' } },
  { code: 'decoder-too-large', facts: { format: 'flac' } },
];

const OF_RECORDINGS = /^(?:recording-|wav-|other-format|no-recording$|format-|no-sound|coding-|sound-|decoder-)/;

function fromDecoding(): Failure[] {
  return [
    ...FIELDS.map(header),
    ...HEADS.map(beginning),
    decoding(new Uint8Array()),
    decoding(new TextEncoder().encode('Bars 1 to 8')),
    decoding(Uint8Array.from(ascii('RIFF'))),
    decoding(riff([formatChunk()])),
    decoding(riff([formatChunk(), chunk('data', [])])),
    decoding(riff([formatChunk(), chunk('data', ramp16(799))])),
    decoding(riff([chunk('fmt ', [1, 0, 1, 0]), data])),
    decoding(riff([chunk('LIST', ascii('INFO')), data])),
  ];
}

function fromDisk(): Failure[] {
  const fault = (code: string) =>
    faultOf(() => {
      throw diskFault(Object.assign(new Error('x'), { code })) ?? new Error('no fault of the disk');
    });
  mkdirSync(join(root, 'in'));
  writeFileSync(join(root, 'in/a.mp3'), 'x');
  writeFileSync(join(root, 'in/b.json'), '{}');
  return [
    ...['ENOENT', 'EACCES', 'ELOOP'].map(fault),
    faultOf(() => readWhole(root, 10)),
    faultOf(() => readWhole('/dev/null', 10)),
    faultOf(() => readWhole(join(root, 'in/b.json'), 1)),
    faultOf(() => writeWhole(join(root, 'in/b.json/x'), 'x')),
    faultOf(() => writeWhole(join(root, 'in'), 'x')),
    ...findTakes([join(root, 'in')]).failures.map(({ failure }) => failure.fault),
    ...readHistory([join(root, 'in/b.json')]).failures.map(({ fault: known }) => known),
    faultOf(() => readResult(root, '../in/b')),
  ];
}

function fromDocuments(): Failure[] {
  const read = (document: unknown) => faultOf(() => readDocument(new TextEncoder().encode(JSON.stringify(document))));
  const take = { format: 'take-result' };
  const tool = { name: 'takesheet', version: '9.1.0' };
  return [
    faultOf(() => readDocument(new Uint8Array())),
    ...[{ version: 2 }, { version: 2, tool }, {}, { tool }, { version: 1 }].map((rest) => read({ ...take, ...rest })),
  ];
}

function fromProgram(): Failure[] {
  return [
    ...(['took-too-long', 'too-much-memory', 'worker-died'] as const).map((loss) => lossOf('x.wav', loss).fault),
    failureOf('x.wav', new TypeError('x is not a function')).fault,
  ];
}

/** What keeps its language: words of the engine for a fault, names of options. */
const PUT_IN = /TypeError: x is not a function|--time-limit/g;

describe('why a take could not be read', () => {
  it.each([
    ['of the recording', fromDecoding],
    ['of the disk', fromDisk],
    ['of a result', fromDocuments],
    ['of the program', fromProgram],
  ])('is said in German: %s', (_what, all) => {
    const faults = all();
    expect(faults.length).toBeGreaterThan(3);
    for (const fault of faults) {
      const [message, german] = [failureSaid('en', fault), failureSaid('de', fault)];
      expect([message, german]).toEqual([message, expect.not.stringContaining(message)]);
      expect([message, german.replace(PUT_IN, '')]).toEqual([message, expect.not.stringMatching(ENGLISH)]);
      // and back from either sentence alone, which is all that documents of earlier programs hold
      for (const said of [message, german]) {
        const told = failureTold({ message: said });
        expect([said, told.code, failureSaid('en', told)]).toEqual([said, fault.code, message]);
      }
    }
  });

  it.each(APART)('is said in German, of what is no WAV file: $code', (fault) => {
    const [message, german] = [failureSaid('en', fault), failureSaid('de', fault)];
    expect([message, german]).toEqual([message, expect.not.stringContaining(message)]);
    expect([message, german]).toEqual([message, expect.not.stringMatching(ENGLISH)]);
  });

  it('is tried here for every fault of a recording', () => {
    // The recording of more than an hour takes long to make.
    const long: Failure = { code: 'recording-too-long', facts: { minutes: 61 } };
    expect(failureSaid('en', long)).toBe('the recording is 61 minutes long; cut it to the take, 60 minutes at most');
    expect(failureSaid('de', long)).toBe(
      'Die Aufnahme ist 61 Minuten lang; auf das Stück kürzen, höchstens 60 Minuten.',
    );
    const tried = new Set([...fromDecoding(), ...APART, long].map(({ code }) => code));
    const codes = Object.keys(FAILURES).filter((code) => OF_RECORDINGS.test(code));
    expect(codes.length).toBeGreaterThan(15);
    expect(codes.filter((code) => !tried.has(code as Failure['code']))).toEqual([]);
  });
});

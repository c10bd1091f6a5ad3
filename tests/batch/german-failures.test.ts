import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { InputError } from '../../src/base/index.js';
import { diskFault } from '../../src/batch/disk-fault.js';
import { failureOf } from '../../src/batch/failure-of.js';
import { readDocument } from '../../src/batch/history/read-document.js';
import { readHistory } from '../../src/batch/history/read-history.js';
import { lossOf } from '../../src/batch/loss-of.js';
import { findTakes } from '../../src/batch/plan/find-takes.js';
import { readWhole } from '../../src/batch/read-whole.js';
import { readResult } from '../../src/batch/results/read-result.js';
import { writeWhole } from '../../src/batch/write-whole.js';
import { decodeWav } from '../../src/decode/index.js';
import { retold, sentenceIn } from '../../src/judge/index.js';
import { ascii, chunk, type FormatFields, formatChunk, ramp16, riff } from '../decode/wav-bytes.js';
import { ENGLISH_WORDS as ENGLISH } from '../helpers/english-words.js';

let root = '';
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'failures-'));
});
afterAll(() => rmSync(root, { recursive: true }));

/** What is said when something fails. */
function saidBy(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return failureOf('x.wav', error).message;
  }
  throw new Error('nothing failed');
}

const decoding = (bytes: Uint8Array) => saidBy(() => decodeWav(bytes));
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

function fromDecoding(): string[] {
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

function fromDisk(): string[] {
  const fault = (code: string) => diskFault(Object.assign(new Error('x'), { code }))?.message ?? '';
  mkdirSync(join(root, 'in'));
  writeFileSync(join(root, 'in/a.mp3'), 'x');
  writeFileSync(join(root, 'in/b.json'), '{}');
  return [
    ...['ENOENT', 'EACCES', 'ELOOP'].map(fault),
    saidBy(() => readWhole(root, 10)),
    saidBy(() => readWhole('/dev/null', 10)),
    saidBy(() => readWhole(join(root, 'in/b.json'), 1)),
    saidBy(() => writeWhole(join(root, 'in/b.json/x'), 'x')),
    saidBy(() => writeWhole(join(root, 'in'), 'x')),
    ...findTakes([join(root, 'in')]).failures.map(({ failure }) => failure.message),
    ...readHistory([join(root, 'in/b.json')]).failures.map(({ message }) => message),
    saidBy(() => readResult(root, '../in/b')),
  ];
}

function fromDocuments(): string[] {
  const read = (document: unknown) => saidBy(() => readDocument(new TextEncoder().encode(JSON.stringify(document))));
  const take = { format: 'take-result' };
  const tool = { name: 'takesheet', version: '9.1.0' };
  return [
    saidBy(() => readDocument(new Uint8Array())),
    ...[{ version: 2 }, { version: 2, tool }, {}, { tool }, { version: 1 }].map((rest) => read({ ...take, ...rest })),
  ];
}

function fromProgram(): string[] {
  return [
    ...(['took-too-long', 'too-much-memory', 'worker-died'] as const).map((loss) => lossOf('x.wav', loss).message),
    failureOf('x.wav', new TypeError('x is not a function')).message,
  ];
}

const src = resolve(import.meta.dirname, '../../src');

/** What a file refuses with, `{}` for what is put in. */
function refusalsIn(path: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const made =
      ts.isNewExpression(node) && node.expression.getText() === 'InputError' ? node.arguments?.[1] : undefined;
    const called = ts.isCallExpression(node) && /^(?:damaged|refuse)$/.test(node.expression.getText());
    const said = made ?? (called ? node.arguments[0] : undefined);
    if (said !== undefined && ts.isStringLiteralLike(said)) found.push(said.text);
    if (said !== undefined && ts.isTemplateExpression(said))
      found.push(said.head.text + said.templateSpans.map((span) => `{}${span.literal.text}`).join(''));
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2023, true));
  return found;
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
    const messages = all();
    expect(messages.length).toBeGreaterThan(3);
    for (const message of messages) {
      const german = sentenceIn('de', message);
      expect([message, german]).toEqual([message, expect.not.stringContaining(message)]);
      expect([message, german.replace(PUT_IN, '')]).toEqual([message, expect.not.stringMatching(ENGLISH)]);
      // and back, so that an English sheet can tell what a German document holds
      expect(retold('en', 'de', german)).toBe(message);
    }
  });

  it('is tried here for every message of the room that decodes', () => {
    // The recording of more than an hour takes long to make.
    const long = 'the recording is 61 minutes long; cut it to the take, 60 minutes at most';
    expect(sentenceIn('de', long)).toBe(
      'Die Aufnahme ist 61 Minuten lang; auf das Stück kürzen, höchstens 60 Minuten.',
    );
    const tried = [...fromDecoding(), long];
    const templates = readdirSync(join(src, 'decode')).flatMap((file) => refusalsIn(join(src, 'decode', file)));
    expect(templates.length).toBeGreaterThan(15);
    for (const template of templates) {
      const form = new RegExp(template.replace(/[.*+?^$()|[\]\\]/g, '\\$&').replaceAll('{}', '.*'));
      expect([template, tried.some((message) => form.test(message))]).toEqual([template, true]);
    }
  });

  it('stays as it is when nobody has translated it', () => {
    const { message } = new InputError('wav-damaged', 'quite another thing');
    expect([sentenceIn('de', message), retold('de', 'en', message)]).toEqual([message, null]);
  });
});

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goodTake, otherTake, SHORT_PART, silence } from './short-part.js';
import { type Ended, everyFile, lines, put, readJson, takesheet } from './takesheet.js';

/** Places in a plain WAV file: "Multimedia Programming Interface and Data Specifications 1.0", Microsoft and IBM 1991. */
const CHANNELS_AT = 22;
const RATE_AT = 24;
const AUDIO_AT = 44;

function changed(change: (view: DataView) => void): Uint8Array {
  const bytes = goodTake().slice();
  change(new DataView(bytes.buffer));
  return bytes;
}

/** Files that cannot be reviewed, and the code each must get. */
const BAD: Readonly<Record<string, readonly [bytes: Uint8Array | string, code: string]>> = {
  'empty.wav': ['', 'empty-file'],
  'four-gigahertz.wav': [changed((view) => view.setUint32(RATE_AT, 0xffffffff, true)), 'wav-unsupported'],
  'header-only.wav': [goodTake().slice(0, AUDIO_AT), 'wav-damaged'],
  'many-channels.wav': [changed((view) => view.setUint16(CHANNELS_AT, 65535, true)), 'wav-unsupported'],
  'one-hertz.wav': [changed((view) => view.setUint32(RATE_AT, 1, true)), 'wav-unsupported'],
  'song.mp3': ['ID3', 'recording-damaged'],
  'text.wav': ['Dear Ms Berg, here is my recording.\n', 'not-a-recording'],
  'zero-hertz.wav': [changed((view) => view.setUint32(RATE_AT, 0, true)), 'wav-damaged'],
};

interface Section {
  readonly failures: readonly { readonly file: string; readonly code: string; readonly message: string }[];
}

let root = '';
let ended: Ended;

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'bad-takes-'));
  put(root, { 'part.musicxml': SHORT_PART, 'alone/good.wav': goodTake() });
  put(join(root, 'takes'), {
    ...Object.fromEntries(Object.entries(BAD).map(([file, [bytes]]) => [file, bytes])),
    'cut.wav': goodTake().slice(0, -60000),
    'good.wav': goodTake(),
    'other.wav': otherTake(),
    'silent.wav': silence(3),
  });
  ended = takesheet(root, 'review', '--score', 'part.musicxml', '--out', 'out', 'takes', 'missing.wav', '--json-only');
});

afterAll(() => {
  rmSync(root, { recursive: true });
});

const failures = () => readJson<Section>(join(root, 'out', 'section.json')).failures;

describe('takes that cannot be reviewed', () => {
  it('make the exit status 1', () => {
    expect(ended.status).toBe(1);
  });

  it('are listed in section.json with a code and one line', () => {
    const expected = { ...BAD, 'missing.wav': ['', 'no-such-file'] };
    expect(Object.fromEntries(failures().map(({ file, code }) => [file, code]))).toEqual(
      Object.fromEntries(Object.entries(expected).map(([file, [, code]]) => [file, code])),
    );
    for (const { message } of failures()) expect(message).toMatch(/^[^\n]{10,300}$/);
  });

  it('cost one line each on standard error', () => {
    for (const { file, message } of failures()) {
      expect(lines(ended.stderr).filter((line) => line.includes(file))).toEqual([
        expect.stringMatching(new RegExp(`^\\d+/13 ${file.replace('.', '\\.')}: `)),
      ]);
      expect(ended.stderr).toContain(message);
    }
    expect(lines(ended.stderr)).toHaveLength(13);
  });

  it('leave no document and nothing half written', () => {
    const written = Object.keys(everyFile(join(root, 'out'))).filter((file) => !file.startsWith('records/'));
    expect(written).toEqual([
      'section.csv',
      'section.json',
      'takes/cut.json',
      'takes/good.json',
      'takes/other.json',
      'takes/silent.json',
    ]);
  });

  it('name no folder of the machine', () => {
    for (const file of Object.keys(everyFile(join(root, 'out')))) {
      expect(readFileSync(join(root, 'out', file), 'utf8')).not.toContain(root);
    }
  });

  it('change nothing for the others', () => {
    takesheet(root, 'review', '--score', 'part.musicxml', '--out', 'out-alone', 'alone/good.wav', '--json-only');
    expect(everyFile(join(root, 'out-alone', 'takes'))['good.json']).toBe(
      everyFile(join(root, 'out', 'takes'))['good.json'],
    );
  });
});

describe('takes that say little', () => {
  it.each([
    ['good', 'reviewed'],
    ['other', 'not-this-score'],
    ['silent', 'too-poor'],
  ])('%s comes out as %s', (name, outcome) => {
    expect(readJson(join(root, 'out', 'takes', `${name}.json`)).outcome).toBe(outcome);
    expect(lines(ended.stdout).map((line) => line.split('\t').slice(0, 2))).toContainEqual([name, outcome]);
  });

  it('a recording that breaks off is reviewed as far as it goes, with a caution', () => {
    const { recording } = readJson<{ recording: { cautions: string[] } }>(join(root, 'out', 'takes', 'cut.json'));
    expect(recording.cautions.length).toBeGreaterThan(0);
  });
});

describe('standard output', () => {
  it('has one line a take: name, outcome, two counts and the report, with tabs between', () => {
    expect(lines(ended.stdout)).toHaveLength(13);
    for (const line of lines(ended.stdout)) {
      expect(line).toMatch(
        /^[^\t]+\t(failed\t\t\t|(reviewed|not-this-score|too-poor)\t\d+\t\d+\ttakes\/[\w-]+\.json)$/,
      );
    }
  });
});

import { describe, expect, it } from 'vitest';
import { recognise, soundsLikeOne } from '../../src/decode/common/recognise.js';
import { ascii } from './wav-bytes.js';

const head = (bytes: readonly number[]): Uint8Array => Uint8Array.from({ length: 600 }, (_, i) => bytes[i] ?? 0);

// First bytes from each format's specification: RFC 9639 (FLAC), id3.org (ID3v2), ISO/IEC 11172-3 (MPEG frame), ISO/IEC
// 13818-7 (ADTS), RFC 3533 (Ogg), ISO/IEC 14496-12 (ftyp), 3GPP TS 26.244 (3gp), QuickTime File Format (moov, qt), AIFF
// 1.3, Core Audio Format 1.0, RFC 4867 (AMR), RFC 8794 (EBML), ASF, MIDI 1.0, ISO 32000 (PDF).
describe('what a file is', () => {
  const kinds: [string, string, number[]][] = [
    ['here', 'wav', [...ascii('RIFF'), 0, 1, 0, 0, ...ascii('WAVE')]],
    ['here', 'wav', [...ascii('RF64'), 255, 255, 255, 255, ...ascii('WAVE')]],
    ['apart', 'flac', ascii('fLaC')],
    ['apart', 'mp3', ascii('ID3\x04')],
    ['apart', 'mp3', [0xff, 0xfb, 0x90, 0x64]],
    ['apart', 'aac', [0xff, 0xf1, 0x50, 0x80]],
    ['apart', 'ogg', ascii('OggS')],
    ['apart', 'mp4', [0, 0, 0, 0x20, ...ascii('ftypM4A ')]],
    ['apart', '3gp', [0, 0, 0, 0x20, ...ascii('ftyp3gp4')]],
    ['apart', 'mov', [0, 0, 0, 0x14, ...ascii('ftypqt  ')]],
    ['apart', 'mov', [0, 0, 0x10, 0, ...ascii('moov')]],
    ['apart', 'aiff', [...ascii('FORM'), 0, 0, 1, 0, ...ascii('AIFF')]],
    ['apart', 'caf', [...ascii('caff'), 0, 1, 0, 0]],
    ['apart', 'amr', ascii('#!AMR\n')],
    ['apart', 'amr', ascii('#!AMR-WB\n')],
    ['apart', 'matroska', [0x1a, 0x45, 0xdf, 0xa3]],
    ['sound-not-read', 'amr-of-many', ascii('#!AMR_MC1.0\n')],
    ['sound-not-read', 'wma', [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11]],
    ['sound-not-read', 'rifx', [...ascii('RIFX'), 0, 0, 1, 0, ...ascii('WAVE')]],
    ['not-a-recording', 'midi', ascii('MThd')],
    ['not-a-recording', 'pdf', ascii('%PDF-1.7')],
    ['not-a-recording', 'riff', [...ascii('RIFF'), 0, 1, 0, 0, ...ascii('AVI ')]],
    ['not-a-recording', 'no-known-kind', [0, 1, 2, 3]],
  ];
  it.each(kinds)('%s: %s', (handling, container, bytes) => {
    expect(recognise(head(bytes))).toMatchObject({ handling, container });
  });

  it('a stream by three packets of 188 bytes that begin with 0x47', () => {
    const bytes = new Uint8Array(600);
    for (const at of [0, 188, 376]) bytes[at] = 0x47;
    expect(recognise(bytes).container).toBe('mpeg-ts');
    expect(recognise(bytes.fill(0, 376)).handling).toBe('not-a-recording');
  });

  it('text', () => {
    expect(recognise(new TextEncoder().encode('Bars 1–8 in one breath, please.\r\n')).container).toBe('text');
  });
});

describe('whether a file without a telling name is looked at', () => {
  it.each<[boolean, string, number[]]>([
    [true, 'a recorder’s file', [0, 0, 0, 0x20, ...ascii('ftypM4A ')]],
    [true, 'a WAV file', [...ascii('RIFF'), 0, 1, 0, 0, ...ascii('WAVE')]],
    [true, 'a WMA file, which is then refused by name', [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11]],
    [false, 'a still picture in the boxes of a film', [0, 0, 0, 0x20, ...ascii('ftypheic')]],
    [false, 'text of 16 bit that begins like MPEG audio', [0xff, 0xfe, 0x41, 0]],
    [false, 'a PDF', ascii('%PDF-1.7')],
    [false, 'a film without sound for this program', [...ascii('RIFF'), 0, 1, 0, 0, ...ascii('AVI ')]],
    [false, 'nothing', []],
  ])('%s: %s', (looked, _what, bytes) => {
    expect(soundsLikeOne(Uint8Array.from(bytes))).toBe(looked);
  });
});

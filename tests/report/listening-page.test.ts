import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { beforeAll, describe, expect, it } from 'vitest';
import { decodeWav, type Take } from '../../src/decode/index.js';
import { demoSection, performTake, readDemoScore } from '../../src/demo/index.js';
import { engravePart } from '../../src/engrave/engrave-part.js';
import { openFaces } from '../../src/page/draw/faces/faces.js';
import { markupText } from '../../src/page/draw/markup-text.js';
import { toSvg } from '../../src/page/draw/to-svg.js';
import { drawListeningPage, type ListeningPageInput } from '../../src/report/index.js';
import { cutClip, gainFor } from '../../src/report/listen/cut-clip.js';
import { findPassage } from '../../src/report/listen/find-passage.js';
import { resample } from '../../src/report/listen/resample.js';
import { findingKindSchema } from '../../src/result/schema/take-result-schema.js';
import { engravingCopy, type Part, readPart } from '../../src/score/index.js';
import { findingAt, playedAsWritten } from '../helpers/marked-excerpts.js';

function sine(hz: number, rateHz: number, seconds = 1): Float32Array {
  return Float32Array.from({ length: rateHz * seconds }, (_, n) => 0.5 * Math.sin((2 * Math.PI * hz * n) / rateHz));
}

/** Away from the ends, where a filter has only half of its samples. */
const rms = (samples: Float32Array): number => {
  const inner = samples.subarray(500, samples.length - 500);
  return Math.sqrt(inner.reduce((sum, x) => sum + x * x, 0) / inner.length);
};

const decibels = (ratio: number): number => 20 * Math.log10(ratio);

const silence = (seconds: number): Take & { readonly samples: Float32Array } => ({
  samples: new Float32Array(Math.round(44100 * seconds)),
  sampleRateHz: 44100,
  channels: 1,
  cautions: [],
});

describe('a clip at a lower rate', () => {
  // Shannon 1949: what lies below half the new rate can be kept, what lies above it has to go.
  it.each([44_100, 48_000, 96_000])('keeps a tone that it can hold, sample by sample, from %d Hz', (rateHz) => {
    const slow = resample(sine(1000, rateHz), rateHz, 22_050);
    const wanted = sine(1000, 22_050);
    expect(slow).toHaveLength(wanted.length);
    const error = slow.map((x, n) => x - (wanted[n] as number));
    expect(decibels(rms(error) / rms(wanted))).toBeLessThan(-60);
  });

  it('keeps 8 kHz within 0.5 dB, and leaves out what would fold back into hearing', () => {
    const whole = rms(sine(8000, 44_100));
    expect(Math.abs(decibels(rms(resample(sine(8000, 44_100), 44_100, 22_050)) / whole))).toBeLessThan(0.5);
    expect(decibels(rms(resample(sine(14_000, 44_100), 44_100, 22_050)) / whole)).toBeLessThan(-60);
  });

  it('stays as it is when its rate is low already', () => {
    const samples = sine(440, 16_000);
    expect(resample(samples, 16_000, 22_050)).toEqual(samples);
  });
});

describe('a clip', () => {
  // RIFF/WAVE by its specification: bytes 22–23 channels, 24–27 rate, 34–35 bits a sample.
  it('is 16 bit mono at 22.05 kHz, of the length asked for', () => {
    const bytes = cutClip(silence(10), 2, 5.5, 1);
    const view = new DataView(bytes.buffer);
    expect([view.getUint16(22, true), view.getUint32(24, true), view.getUint16(34, true)]).toEqual([1, 22_050, 16]);
    expect(decodeWav(bytes).samples.length / 22_050).toBeCloseTo(3.5, 3);
  });

  it('holds the seconds asked for and no others', () => {
    const take = silence(4);
    take.samples.set(sine(500, 44_100), 2 * 44_100);
    const inside = decodeWav(cutClip(take, 2.1, 2.9, 1)).samples.subarray();
    expect(rms(inside)).toBeCloseTo(0.5 / Math.SQRT2, 2);
    expect(rms(decodeWav(cutClip(take, 0, 1.9, 1)).samples.subarray())).toBeLessThan(1e-4);
  });

  it('is brought near full scale by one factor for the whole take, never beyond it', () => {
    const take = silence(1);
    take.samples.set(sine(500, 44_100));
    expect(gainFor(take) * 0.5).toBeCloseTo(0.89, 3);
    expect(gainFor(silence(1))).toBe(1);
  });
});

describe('the passage of a finding', () => {
  let part: Part;
  beforeAll(() => {
    part = readPart(readDemoScore());
  });

  // The helper plays a quarter in 0.6 s, so bars before and after of the 4/4 étude are 2.4 s each.
  it('runs from one bar before to one bar after', () => {
    const index = part.notes.findIndex(({ bar }) => bar === '11');
    const passage = findPassage(findingAt(part, 'accidental', index), playedAsWritten(part), part, 8);
    expect(passage?.bars.map(({ bar }) => bar)).toEqual(['10', '11', '12']);
  });

  it('holds its notes, lies within the recording and is no longer than it must be', () => {
    const result = playedAsWritten(part);
    const kinds = findingKindSchema.options.filter((kind) => !['off-tempo', 'tuning-off', 'restart'].includes(kind));
    const last = part.notes.length - 1;
    const law = fc.property(fc.constantFrom(...kinds), fc.nat(last), fc.nat(12), (kind, index, more) => {
      const toIndex = Math.min(last, index + more);
      const passage = findPassage(findingAt(part, kind, index, { toIndex }), result, part, 8);
      if (passage === null) return;
      const { fromSeconds, toSeconds, bars } = passage;
      const own = (result.notes[toIndex]?.offset ?? 0) - (result.notes[index]?.onset ?? 0);
      expect(fromSeconds).toBeGreaterThanOrEqual(0);
      expect(fromSeconds).toBeLessThanOrEqual(result.notes[index]?.onset ?? 0);
      expect(toSeconds).toBeGreaterThanOrEqual(
        Math.min(result.take.durationSeconds, result.notes[toIndex]?.offset ?? 0),
      );
      expect(toSeconds).toBeLessThanOrEqual(result.take.durationSeconds);
      expect(toSeconds - fromSeconds).toBeLessThanOrEqual(Math.max(8, own + 2) + 0.3);
      expect(bars.length).toBeGreaterThan(0);
    });
    fc.assert(law, { seed: 11, numRuns: 300 });
  });

  it('lets a note that was left out be missed between its neighbours', () => {
    const result = playedAsWritten(part);
    const { onset: _, offset: __, playedMidi: ___, ...rest } = result.notes[20]!;
    result.notes[20] = { ...rest, status: 'left-out' };
    const passage = findPassage(findingAt(part, 'missed-note', 20), result, part, 8)!;
    expect(passage.fromSeconds).toBeLessThan(result.notes[19]!.offset!);
    expect(passage.toSeconds).toBeGreaterThan(result.notes[21]!.onset!);
  });

  it('is not there for the take as a whole, nor where nothing was heard', () => {
    const result = playedAsWritten(part);
    expect(findPassage(findingAt(part, 'tuning-off', 0), result, part, 8)).toBeNull();
    const unheard = { ...result, notes: result.notes.map(({ onset: _, offset: __, ...note }) => note) };
    expect(findPassage(findingAt(part, 'missed-note', 9), unheard, part, 8)).toBeNull();
  });
});

describe('SVG of a drawing', () => {
  const { music } = openFaces();

  it('is well formed whatever its text holds', () => {
    const law = fc.property(fc.string({ unit: 'binary' }), (text) => {
      const item = { kind: 'text', x: 1, baseline: 2, text, face: 'regular', size: 9, ink: 'text' } as const;
      const svg = `<svg>${toSvg([item], music)}</svg>`;
      expect(XMLValidator.validate(svg)).toBe(true);
      expect(svg.match(/</g)).toHaveLength(4);
    });
    fc.assert(law, { seed: 3 });
  });

  // SMuFL 1.4, metadata of Bravura: advance width of noteheadBlack is 1.18 staff spaces, 4 of them to the em.
  it('draws signs as outlines, each where the one before ends', () => {
    const item = {
      kind: 'text',
      x: 10,
      baseline: 5,
      text: '\u{E0A4}\u{E0A4}',
      face: 'music',
      size: 20,
      ink: 'text',
    } as const;
    const places = [...toSvg([item], music).matchAll(/translate\(([\d.]+) ([\d.]+)\)/g)].map(([, x, y]) =>
      [x, y].map(Number),
    );
    expect(places[0]).toEqual([10, 5]);
    expect(places[1]?.[0]).toBeCloseTo(10 + 1.18 * 5, 1);
  });

  // HTML Living Standard, 13.1.4: these are the signs that can end a text or an attribute.
  it('names the signs of markup', () => {
    expect(markupText(`<b a="1" c='2'>&\u0000\uD800`)).toBe('&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp; \u{FFFD}');
  });
});

describe('a listening page', () => {
  let input: ListeningPageInput;
  beforeAll(() => {
    const part = readPart(readDemoScore());
    const { plan } = demoSection()[0]!;
    const { samples, sampleRateHz } = performTake(part, plan);
    const take: Take = { samples, sampleRateHz, channels: 1, cautions: [] };
    const findings = Array.from({ length: 40 }, (_, i) => findingAt(part, 'note-out-of-tune', i * 2));
    const played = playedAsWritten(part);
    const result = { ...played, findings, take: { ...played.take, durationSeconds: samples.length / sampleRateHz } };
    const levelDb = new Float32Array(6000).fill(-20);
    input = {
      result,
      part,
      take,
      loudness: { hopSeconds: 0.01, levelDb },
      engraved: () => engravePart(engravingCopy(readDemoScore())),
    };
  });

  it('stays below 3 MB however much there is to say, says that it left some out, and comes out the same again', async () => {
    const [first, second] = [await drawListeningPage(input), await drawListeningPage(input)];
    expect(Buffer.byteLength(first)).toBeLessThan(3_000_000);
    expect(first.match(/<article /g)).toHaveLength(40);
    expect(first.match(/<audio /g)?.length).toBeGreaterThan(3);
    expect(first).toContain('Only the first places have sound');
    expect(second).toBe(first);
  });

  it('holds no address of any other file', async () => {
    const page = await drawListeningPage(input);
    const addresses = [...page.matchAll(/(?:src|href|url\(|action|srcset|data)\s*[=(]?\s*["']?([a-z]+:)/g)].map(
      ([, scheme]) => scheme,
    );
    expect(new Set(addresses)).toEqual(new Set(['data:']));
    expect(page).not.toMatch(/https?:/);
  });

  it('goes without excerpts where the part cannot be engraved, and without sound where nothing was reviewed', async () => {
    const plain = await drawListeningPage({ ...input, engraved: async () => null });
    expect(plain).toContain('<audio ');
    expect(plain).not.toContain('figcaption>The arrow');
    const poor = await drawListeningPage({ ...input, result: { ...input.result, outcome: 'too-poor' } });
    expect(poor).not.toContain('<audio ');
    expect(poor.match(/<h2>/g)?.length).toBeGreaterThan(0);
  });
});

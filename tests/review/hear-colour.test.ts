import { describe, expect, it } from 'vitest';
import { defaultBrief } from '../../src/brief/index.js';
import type { TakePlan, VoiceName } from '../../src/demo/index.js';
import { measureTake, type ToneColourMeasure } from '../../src/measure/index.js';
import { hearColour } from '../../src/review/hear-colour.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

const PART = demoPart();
const BRIEF = defaultBrief(PART);
const ASKED = { ...BRIEF, criteria: { ...BRIEF.criteria, sound: { judged: true, points: 10 } } };

async function coloured(plan: Partial<TakePlan>, brief: typeof BRIEF | null = ASKED) {
  const heard = hearTake(PART, { seed: 5, signalToNoiseDb: 60, ...plan });
  const measurements = measureTake(heard);
  const asked = { part: PART, alignment: heard.alignment, measurements, ...(brief === null ? {} : { brief }) };
  return { measurements, after: await hearColour(heard.take, asked) };
}

describe('the colour of the tone', () => {
  it('is heard where the brief gives the sound points, and nowhere else', async () => {
    for (const brief of [null, BRIEF]) {
      const { measurements, after } = await coloured({}, brief);
      expect(after).toBe(measurements);
    }
    expect((await coloured({})).after.toneColour).toBeDefined();
  });

  // The synthesiser's voices open with loudness; a sine has one harmonic.
  it.each(['clarinet', 'flute', 'brass'] as const satisfies readonly VoiceName[])(
    'of a %s is brighter when it is louder',
    async (voice) => {
      const colour = (await coloured({ voice })).after.toneColour as ToneColourMeasure;
      expect(colour.notes.length).toBeGreaterThan(15);
      for (const { centroidHarmonics, tristimulus } of colour.notes) {
        expect(centroidHarmonics).toBeGreaterThan(1);
        // each is a median by itself
        expect(Math.abs(tristimulus.reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(0.02);
      }
      const slope = colour.withLoudness;
      if ('notMeasured' in slope) expect.fail(slope.notMeasured.code);
      expect(slope.harmonicsPerDb - 2 * slope.errorHarmonicsPerDb).toBeGreaterThan(0);
      expect(slope.reachDb).toBeGreaterThan(6);
    },
  );

  it('is not set against loudness where all is as loud', async () => {
    const colour = (
      await coloured({
        voice: 'brass',
        contrast: 0,
        accentDb: 0,
        levelScatterDb: 0.2,
        faults: [{ kind: 'hairpin', share: 0 }],
      })
    ).after.toneColour as ToneColourMeasure;
    expect(colour.withLoudness).toEqual({ notMeasured: { code: 'loud-and-soft-alike', facts: {} } });
  });

  it('is not told of in a room that rings', async () => {
    expect((await coloured({ roomSeconds: 1.5 })).after.toneColour).toMatchObject({
      notMeasured: { code: 'room-rings' },
    });
  });
});

import { describe, expect, it } from 'vitest';
import type { Fault, NoteAddress, TakePlan, VoiceName } from '../../src/demo/index.js';
import { type Finding, judgeTake } from '../../src/judge/index.js';
import { measureTake } from '../../src/measure/index.js';
import { demoPart, hearTake } from '../helpers/heard-take.js';

/** From samples to words: what a player of the demo étude is told. False alarms are the worst failure. */
const PART = demoPart();
const at = (bar: string, beat: number): NoteAddress => ({ bar, beat });

function review(plan: Partial<TakePlan>): readonly Finding[] {
  const heard = hearTake(PART, plan);
  return judgeTake({ part: PART, alignment: heard.alignment, measurements: measureTake(heard) }).findings;
}

const fixes = (findings: readonly Finding[]): string[] =>
  findings.filter((f) => f.weight === 'fix').map((f) => `${f.kind} in bar ${f.bar}`);

describe.each<VoiceName>(['clarinet', 'flute', 'brass'])('a take without a fault, %s', (voice) => {
  it.each<[string, Partial<TakePlan>]>([
    ['as marked', {}],
    ['by another player', { seed: 5, roomSeconds: 0.7, timingScatterSeconds: 0.01 }],
    ['a little slower, a little sharp', { seed: 6, tempoFactor: 0.94, tuningCents: 8 }],
  ])('%s: nothing to fix, and something went well', (_what, plan) => {
    const findings = review({ voice, ...plan });
    expect(fixes(findings)).toEqual([]);
    expect(findings.some((f) => f.weight === 'well')).toBe(true);
  });
});

describe('one fault in an otherwise good take', () => {
  it.each<[string, Fault, object]>([
    [
      'a sign carried past the barline',
      { kind: 'misread', at: at('5', 2), misreading: 'carried-past-barline' },
      { kind: 'accidental', bar: '5', facts: expect.objectContaining({ misreading: 'carried-past-barline' }) },
    ],
    [
      'a sign dropped within the bar',
      { kind: 'misread', at: at('4', 4), misreading: 'dropped-within-bar' },
      { kind: 'accidental', bar: '4', facts: expect.objectContaining({ misreading: 'dropped-within-bar' }) },
    ],
    ['a wrong note', { kind: 'wrong-note', at: at('16', 1), semitones: 4 }, { kind: 'wrong-note', bar: '16' }],
    ['a note left out', { kind: 'missed-note', at: at('19', 4) }, { kind: 'missed-note', bar: '19' }],
    ['a note too many', { kind: 'added-note', after: at('11', 4), semitones: -4 }, { kind: 'added-note', bar: '11' }],
    ['a fermata without end', { kind: 'fermata', at: at('15', 3), ratio: 4 }, { kind: 'fermata-long', bar: '15' }],
    [
      'beginning again',
      { kind: 'restart', after: at('7', 2), resumeAt: at('6', 1), pauseSeconds: 1.2 },
      { kind: 'restart', bar: '6' },
    ],
    ['bars jumped over', { kind: 'skip', from: at('9', 1), to: at('10', 4) }, { kind: 'skipped-bars', bar: '9' }],
  ])('%s is the one thing to fix', (_what, fault, expected) => {
    const findings = review({ faults: [fault] });
    expect(findings.filter((f) => f.weight === 'fix')).toEqual([expect.objectContaining(expected)]);
  });

  it('a crescendo that hardly grows is found', () => {
    const findings = review({ faults: [{ kind: 'hairpin', number: 0, share: 0.05 }] });
    expect(findings.filter((f) => f.criterion === 'dynamics' && f.weight !== 'well')).toContainEqual(
      expect.objectContaining({ kind: 'weak-hairpin', bar: '6' }),
    );
  });

  it('no contrast at all is found, and not praised', () => {
    const findings = review({ contrast: 0, voice: 'brass' });
    expect(fixes(findings).some((text) => /^(?:weak|reversed)-contrast/.test(text))).toBe(true);
    expect(findings.filter((f) => f.weight === 'well').map((f) => f.criterion)).not.toContain('dynamics');
  });

  it('a whole take far too slow or out of tune is something to know, not an accusation', () => {
    const findings = review({ tempoFactor: 0.7, tuningCents: -40 });
    expect(fixes(findings)).toEqual([]);
    const kinds = findings.filter((f) => f.weight === 'watch').map((f) => f.kind);
    expect(kinds).toContain('off-tempo');
    expect(kinds).toContain('tuning-off');
  });
});

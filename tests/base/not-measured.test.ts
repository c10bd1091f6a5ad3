import { describe, expect, it } from 'vitest';
import { InputError, isMeasured, notMeasured } from '../../src/base/index.js';

describe('what could not be measured', () => {
  it('says why, and is told from every number and object', () => {
    expect(notMeasured('note-in-noise')).toEqual({ notMeasured: { code: 'note-in-noise', facts: {} } });
    const facts = { mark: 'mf' };
    expect(notMeasured('too-few-under-mark', facts)).toEqual({ notMeasured: { code: 'too-few-under-mark', facts } });
    expect(isMeasured(notMeasured('note-in-noise'))).toBe(false);
    for (const value of [0, -3, Number.NaN, null, { centsFromA440: 0 }]) expect(isMeasured(value)).toBe(true);
  });
});

describe('a mistake of the user', () => {
  it('is an error with its kind, its code and facts, and the file it is about', () => {
    const error = new InputError('wav-ends-at-once', { bytes: 3 });
    expect(error).toBeInstanceOf(Error);
    expect([error.name, error.code, error.path]).toEqual(['InputError', 'wav-damaged', null]);
    expect(error.fault).toEqual({ code: 'wav-ends-at-once', facts: { bytes: 3 } });
    const named = error.about('a.wav').about('folder');
    expect([named.code, named.fault, named.path]).toEqual([error.code, error.fault, 'a.wav']);
  });

  it('has one printable line for programmers, however much of a file it quotes', () => {
    const { message } = new InputError('score-other-document', { root: `a\n\u001b${'b'.repeat(5000)}` });
    expect(message).toMatch(/^score-other-document \P{Cc}*$/u);
    expect(message.length).toBeLessThanOrEqual(400);
  });
});

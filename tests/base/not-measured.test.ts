import { describe, expect, it } from 'vitest';
import { InputError, isMeasured, notMeasured } from '../../src/base/index.js';

describe('what could not be measured', () => {
  it('says why, and is told from every number and object', () => {
    expect(notMeasured('too soft')).toEqual({ notMeasured: 'too soft' });
    expect(isMeasured(notMeasured('too soft'))).toBe(false);
    for (const value of [0, -3, Number.NaN, null, { centsFromA440: 0 }]) expect(isMeasured(value)).toBe(true);
  });
});

describe('a mistake of the user', () => {
  it('is an error with a code and one plain line', () => {
    const error = new InputError('empty-file', 'the file is empty');
    expect(error).toBeInstanceOf(Error);
    expect([error.name, error.code, error.message]).toEqual(['InputError', 'empty-file', 'the file is empty']);
  });
});

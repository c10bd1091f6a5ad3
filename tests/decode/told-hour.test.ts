import { describe, expect, it } from 'vitest';
import { refuseToldHour } from '../../src/decode/readers/refuse-told-hour.js';

/** A file of so many kilobits a second. */
const bytesOf = (seconds: number, kilobits: number): number => (seconds * kilobits * 1000) / 8;

describe('a file that says how long it is', () => {
  it('is refused beyond an hour, with the minutes it says', () => {
    expect(() => refuseToldHour(3601, bytesOf(3601, 64))).toThrow(
      expect.objectContaining({ fault: { code: 'recording-too-long', facts: { minutes: 60 } } }),
    );
    expect(() => refuseToldHour(2 * 3600, bytesOf(2 * 3600, 64))).toThrow(
      expect.objectContaining({ fault: { code: 'recording-too-long', facts: { minutes: 120 } } }),
    );
  });

  // 3GPP TS 26.071: AMR knows no rate below 4.75 kbit/s.
  it('is refused in the sparsest coding, too', () => {
    expect(() => refuseToldHour(3700, bytesOf(3700, 4.75))).toThrow();
  });

  it('is decoded up to an hour, and where it does not say', () => {
    expect(() => refuseToldHour(3600, bytesOf(3600, 64))).not.toThrow();
    expect(() => refuseToldHour(null, 2 ** 30)).not.toThrow();
  });

  it('is not believed where it has not the bytes: an index may be damaged', () => {
    expect(() => refuseToldHour(2 * 3600, bytesOf(60, 64))).not.toThrow();
  });
});

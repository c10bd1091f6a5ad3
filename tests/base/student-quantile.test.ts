import { expect, it } from 'vitest';
import { studentQuantile } from '../../src/base/index.js';

// Source: any table of Student's t, two-sided 95 % and 99 %
it.each([
  [1.95996, 5, 2.571],
  [1.95996, 10, 2.228],
  [1.95996, 30, 2.042],
  [2.57583, 5, 4.032],
  [2.57583, 8, 3.355],
  [2.57583, 20, 2.845],
])('%f normal with %i degrees of freedom is %f', (normal, df, expected) => {
  expect(Math.abs(studentQuantile(normal, df) - expected)).toBeLessThan(0.005);
});

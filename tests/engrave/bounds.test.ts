import { describe, expect, it } from 'vitest';
import { boundMemory } from '../../src/engrave/bound-memory.js';
import { engraveInThread } from '../../src/engrave/engrave-in-thread.js';
import { engravePart } from '../../src/engrave/index.js';
import { engravingCopy } from '../../src/score/index.js';
import { note, scoreOf } from '../score/score-of.js';

const file = new URL('./threads/acting.mjs', import.meta.url);

describe('the engraver', () => {
  it.each(['hang', 'throw', 'exit', 'grow-heap'])('loses only the part at fault (%s)', async (fault) => {
    // A busy machine starts a thread in less than these seconds.
    const engraver = { file, limits: { seconds: 5, heapMb: 64 } };
    const { parts, stop } = engraveInThread(['first', fault, null, 'last'], engraver);
    expect(await parts).toEqual(['first', null, null, 'last']);
    await stop();
  });

  it('is ended while it hangs', async () => {
    const { parts, stop } = engraveInThread(['hang', 'never'], { file, limits: { seconds: 500, heapMb: 64 } });
    await stop();
    expect(await parts).toEqual([null]);
  });

  // WebAssembly JavaScript Interface: a page is 65,536 bytes.
  it('is refused memory past its bound', () => {
    const grow = WebAssembly.Memory.prototype.grow;
    try {
      boundMemory(1);
      const memory = new WebAssembly.Memory({ initial: 1 });
      expect(memory.grow(15)).toBe(1);
      expect(() => memory.grow(1)).toThrow(RangeError);
    } finally {
      WebAssembly.Memory.prototype.grow = grow;
    }
  });
});

describe('a score that asks for more than any part has', () => {
  it.each([
    ['<staves>1000000</staves>', ''],
    ['<staff-details><staff-lines>900000000</staff-lines></staff-details>', ''],
    ['<key><fifths>1000000</fifths></key>', ''],
    ['', '<dot/>'.repeat(100_000)],
    ['', '<notations><ornaments><tremolo type="single">1000000</tremolo></ornaments></notations>'],
  ])('is engraved without it (%s%.20s)', async (attribute, sign) => {
    const opening = `<attributes><divisions>1</divisions>${attribute}<clef><sign>G</sign><line>2</line></clef></attributes>`;
    const copy = engravingCopy(scoreOf([opening + note('C5', 4).replace('</note>', `${sign}</note>`)]));
    expect(copy.length).toBeLessThan(2000);
    expect(copy).not.toMatch(/000000/);
    expect((await engravePart(copy))?.bars).toHaveLength(1);
  });
});

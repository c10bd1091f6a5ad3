import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { openFaces } from '../../src/page/draw/faces/faces.js';
import { markupText } from '../../src/page/draw/markup-text.js';
import { toSvg } from '../../src/page/draw/to-svg.js';

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

import { describe, expect, it } from 'vitest';
import { drawTakeReport } from '../../src/report/index.js';
import { readPart } from '../../src/score/index.js';
import { findingAt, playedAsWritten } from '../helpers/marked-excerpts.js';
import { inspectPdf } from '../helpers/pdf-tools.js';
import { attributes, note, scoreOf } from '../score/score-of.js';

describe('a take with thousands of findings', () => {
  const bars = Array.from({ length: 1000 }, (_, i) => (i === 0 ? attributes(1) : '') + note('C5', 1).repeat(4));
  const part = readPart(scoreOf(bars));
  const findings = part.notes.slice(0, 3691).map((_, index) => findingAt(part, 'missed-note', index));
  const result = { ...playedAsWritten(part), findings };
  const loudness = { hopSeconds: 0.05, levelDb: new Float32Array(48_000).fill(-30) };

  // 3 are told first, 120 after them: definition.
  it('shows those that help most and counts the rest', async () => {
    const creationDate = new Date('2026-03-02T00:00:00Z');
    const pdf = await inspectPdf(await drawTakeReport({ result, part, loudness, paper: 'a4', creationDate }));
    expect(pdf.pageTexts.join(' ').replace(/\s+/g, '')).toContain('3568moreplacesarenotshownhere');
  });
});

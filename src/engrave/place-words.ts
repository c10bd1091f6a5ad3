import { type Face, placeText, setText, type TextItem, type Typesetter } from '../page/index.js';

/** Share of the size of the words before it. Source: common practice (a third of an em). */
const SIGN_GAP = 0.35;

/** Text of an engraving that is not set yet: how wide it is depends on faces that only a page opens. */
export interface Words {
  readonly kind: 'words';
  readonly runs: readonly TextRun[];
  /** where it begins, ends or has its middle, points */
  readonly x: number;
  readonly baseline: number;
  readonly align: 'start' | 'middle' | 'end';
}

/** Text in one face and size. */
export interface TextRun {
  readonly text: string;
  readonly face: Face;
  /** points */
  readonly size: number;
}

/**
 * @param typesetter widths and coverage of the faces
 * @param words what to set
 * @returns the same as items of a page
 *
 * Source: SVG 2, `text-anchor`.
 */
export function placeWords(typesetter: Typesetter, { runs, x, baseline, align }: Words): TextItem[] {
  const sets = runs.map((run, i) => {
    const { size } = run;
    const spaces = (text: string): number => typesetter.widthOf(text, run.face, size);
    const before = spaces(/^ */.exec(run.text)?.[0] ?? '') + signGap(runs[i - 1], run);
    const after = run.text.trim() === '' ? 0 : spaces(/ *$/.exec(run.text)?.[0] ?? '');
    const style = { face: run.face, size, leading: 0, ink: 'text' } as const;
    const set = setText(typesetter, run.text, style, Number.POSITIVE_INFINITY);
    return { set, size, before, width: before + (set.lines[0]?.width ?? 0) + after };
  });
  const width = sets.reduce((sum, set) => sum + set.width, 0);
  let left = x - (align === 'middle' ? width / 2 : align === 'end' ? width : 0);
  return sets.flatMap(({ set, size, before, width: advance }) => {
    const items = placeText(set, left + before, baseline - size * 0.33).filter(({ text }) => text.trim() !== '');
    left += advance;
    return items;
  });
}

/** White before a sign that follows words at once, such as the note of a metronome mark; points. */
function signGap(before: TextRun | undefined, { face }: TextRun): number {
  const close = face === 'music' && before !== undefined && before.face !== 'music' && /\S$/.test(before.text);
  return close ? SIGN_GAP * before.size : 0;
}

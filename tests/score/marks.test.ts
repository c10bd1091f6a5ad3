import { describe, expect, test } from 'vitest';
import { type Part, readPart } from '../../src/score/index.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, direction, dynamic, note, scoreOf, wedge, words } from './score-of.js';

const q = (count = 1): string => note('C4', 1).repeat(count);
const bars = (...contents: string[]): Part =>
  readPart(scoreOf(contents.map((bar, i) => (i === 0 ? attributes(1) : '') + bar)));
const levels = (part: Part): unknown[] => part.dynamics.map((d) => [d.mark, d.index, d.toIndex]);
const hairpins = (part: Part): unknown[] => part.hairpins.map((h) => [h.kind, h.from, h.index, h.toIndex]);
const repeatEnd = '<barline location="right"><repeat direction="backward"/></barline>';

// A mark holds until the next one: common practice.
describe('levels', () => {
  test('a mark holds to the note before the next mark, and a repeated mark is its own', () => {
    expect(levels(bars(dynamic('f') + q(4), q(2) + dynamic('p') + q(2), dynamic('p') + q(4)))).toEqual([
      ['f', 0, 5],
      ['p', 6, 7],
      ['p', 8, 11],
    ]);
  });

  test('a mark ends where a hairpin begins, and keeps its own first note', () => {
    expect(
      levels(
        bars(
          dynamic('p') + q(2) + wedge('crescendo') + q(2) + wedge('stop'),
          dynamic('f') + wedge('diminuendo') + q(4) + wedge('stop'),
        ),
      ),
    ).toEqual([
      ['p', 0, 1],
      ['f', 4, 4],
    ]);
  });

  // MusicXML 4.0, dynamics: may stand in a direction or in the notations of a note.
  test('marks at the note count the same', () => {
    expect(levels(bars(q(2) + note('D4', 1, { notations: '<dynamics><mf/></dynamics>' }) + q()))).toEqual([
      ['mf', 2, 3],
    ]);
  });

  test('marks typed as words count the same', () => {
    expect(levels(bars(words('mf') + q(4)))).toEqual([['mf', 0, 3]]);
    expect(levels(bars(words('m') + q(4)))).toEqual([]);
  });

  test('sf, sfz, rf strike one note and leave the level; fp goes on at another one', () => {
    const part = bars(dynamic('f') + q() + dynamic('sfz') + q() + dynamic('fp') + q(2), dynamic('mp') + q(4));
    expect(levels(part)).toEqual([
      ['f', 0, 1],
      ['mp', 4, 7],
    ]);
    expect(part.dynamicEvents).toEqual([
      { mark: 'sfz', index: 1 },
      { mark: 'fp', index: 2 },
    ]);
  });

  test('marks come again in each pass, and do not reach over a jump to a passage under another mark', () => {
    const part = bars(dynamic('f') + q(4), q(2) + dynamic('p') + q(2) + repeatEnd, q(4));
    expect(part.dynamics.map((d) => [d.mark, d.bar, d.pass, d.index, d.toIndex])).toEqual([
      ['f', '1', 1, 0, 5],
      ['p', '2', 1, 6, 7],
      ['f', '1', 2, 8, 13],
      ['p', '2', 2, 14, 19],
    ]);
    const back = bars(
      dynamic('f') + q(4),
      `<barline location="left"><repeat direction="forward"/></barline>${q(4)}`,
      dynamic('p') + q(4) + repeatEnd,
    );
    expect(levels(back)).toEqual([
      ['f', 0, 7],
      ['p', 8, 11],
      ['p', 16, 19],
    ]);
  });

  test('a mark under a rest counts from the next note; one that no note follows is left out', () => {
    expect(levels(bars(q(2) + dynamic('pp') + note('r', 1) + q(), q(4) + dynamic('ff')))).toEqual([['pp', 2, 6]]);
  });

  test('a mark before the main note does not take the grace note before it along', () => {
    const grace = note('D4', 0, { grace: true });
    expect(levels(bars(q(2) + grace + dynamic('f') + q(2)))).toEqual([['f', 3, 4]]);
    expect(levels(bars(q(2) + dynamic('f') + grace + q(2)))).toEqual([['f', 2, 4]]);
  });

  // MusicXML 4.0, offset: in divisions, "where the direction will appear relative to the current musical location".
  test('a mark moved by an offset belongs to the note it is moved to, or to the one it is a little beside', () => {
    const moved = (offset: number): Part =>
      readPart(scoreOf([attributes(8) + dynamic('f', `<offset>${offset}</offset>`) + note('C4', 8).repeat(4)]));
    expect(moved(16).dynamics[0]?.index).toBe(2);
    expect(moved(1).dynamics[0]?.index).toBe(0);
    expect(moved(15).dynamics[0]?.index).toBe(2);
    expect(moved(12).dynamics[0]?.index).toBe(2);
  });

  test('marks for another voice or staff do not count', () => {
    const second = `<backup><duration>4</duration></backup>${note('E3', 4, { voice: '2' })}`;
    expect(levels(bars(dynamic('f', '<voice>2</voice>') + dynamic('p', '<voice>1</voice>') + q(4) + second))).toEqual([
      ['p', 0, 3],
    ]);
  });

  test('an unknown mark is remarked on', () => {
    const part = bars(direction('<dynamics><other-dynamics>brutal</other-dynamics></dynamics>') + q(4));
    expect(part.dynamics).toEqual([]);
    expect(remarksOf(part)).toContain('Bar 1: the dynamic "brutal" is not known.');
  });
});

// MusicXML 4.0, wedge: start and stop stand before the place they mean; notes that begin in [start, stop) are under it.
describe('wedges', () => {
  test('from note to note, from bar to bar', () => {
    const part = bars(q() + wedge('crescendo') + q(3), q(2) + wedge('stop') + q(2));
    expect(part.hairpins).toEqual([
      {
        kind: 'crescendo',
        from: 'wedge',
        bar: '1',
        toBar: '2',
        pass: 1,
        startQuarters: 1,
        endQuarters: 6,
        index: 1,
        toIndex: 5,
      },
    ]);
  });

  test('a stop at the barline keeps out of the next bar', () => {
    expect(hairpins(bars(wedge('diminuendo') + q(4) + wedge('stop'), dynamic('p') + q(4)))).toEqual([
      ['diminuendo', 'wedge', 0, 3],
    ]);
  });

  test('a level ends a wedge, even where its stop comes late', () => {
    expect(hairpins(bars(wedge('crescendo') + q(4), dynamic('f') + q() + wedge('stop') + q(3)))).toEqual([
      ['crescendo', 'wedge', 0, 3],
    ]);
  });

  test('swelling and fading side by side', () => {
    const part = bars(wedge('crescendo') + q(2) + wedge('stop') + wedge('diminuendo') + q(2) + wedge('stop'));
    expect(hairpins(part)).toEqual([
      ['crescendo', 'wedge', 0, 1],
      ['diminuendo', 'wedge', 2, 3],
    ]);
  });

  test('in mid-air: to the next level, else to the end of its bar, with a remark', () => {
    const toLevel = bars(wedge('crescendo') + q(4), q(4), dynamic('f') + q(4));
    expect(hairpins(toLevel)).toEqual([['crescendo', 'wedge', 0, 7]]);
    expect(remarksOf(toLevel)).toContain('Bar 1: the crescendo wedge has no end.');
    expect(hairpins(bars(q() + wedge('crescendo') + q(3), q(4)))).toEqual([['crescendo', 'wedge', 1, 3]]);
  });

  test('without notes: left out, with a remark', () => {
    const within = bars(note('C4', 2) + wedge('crescendo') + wedge('stop') + note('C4', 2));
    expect(within.hairpins).toEqual([]);
    expect(remarksOf(within)).toContain('Bar 1: no note begins under the crescendo, so it is not measured.');
  });

  test('again in each pass, and broken off where the order jumps', () => {
    const first = '<barline location="left"><ending number="1" type="start"/></barline>';
    const firstEnd =
      '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>';
    const second = '<barline location="left"><ending number="2" type="start"/></barline>';
    const part = bars(q(2) + wedge('crescendo') + q(2), first + q(2) + wedge('stop') + q(2) + firstEnd, second + q(4));
    expect(part.hairpins.map((h) => [h.pass, h.index, h.toIndex])).toEqual([
      [1, 2, 5],
      [2, 10, 11],
    ]);
  });
});

// Words end with their dashes, at the next level, wedge or contrary word, else after four bars: common practice.
describe('crescendo and diminuendo in words', () => {
  test.each([
    ['cresc.', 'crescendo'],
    ['crescendo', 'crescendo'],
    ['poco a poco cresc.', 'crescendo'],
    ['Cresc. molto', 'crescendo'],
    ['dim.', 'diminuendo'],
    ['diminuendo', 'diminuendo'],
    ['decresc.', 'diminuendo'],
    ['poco a poco decrescendo', 'diminuendo'],
    ['dim. e rit.', 'diminuendo'],
    ['morendo', 'diminuendo'],
  ])('%s', (text, kind) => {
    expect(hairpins(bars(words(text) + q(4), dynamic('f') + q(4)))).toEqual([[kind, 'words', 0, 3]]);
  });

  test.each([['dolce'], ['non cresc.'], ['dimmi'], ['senza dim.']])('not %s', (text) => {
    expect(hairpins(bars(words(text) + q(4), dynamic('f') + q(4)))).toEqual([]);
  });

  test('to the end of the dashes', () => {
    const dashes = (type: string): string => direction(`<dashes type="${type}" number="1"/>`);
    expect(hairpins(bars(words('cresc.') + dashes('start') + q(4), q(2) + dashes('stop') + q(2)))).toEqual([
      ['crescendo', 'words', 0, 5],
    ]);
  });

  test('to the contrary word', () => {
    expect(hairpins(bars(words('cresc.') + q(4), q(2) + words('dim.') + q(2), dynamic('p') + q(4)))).toEqual([
      ['crescendo', 'words', 0, 5],
      ['diminuendo', 'words', 6, 7],
    ]);
  });

  test('four bars at most', () => {
    expect(hairpins(bars(words('cresc.') + q(4), q(4), q(4), q(4), q(4)))).toEqual([['crescendo', 'words', 0, 15]]);
  });

  test('words at a wedge of the same kind are one hairpin', () => {
    expect(hairpins(bars(words('cresc.') + wedge('crescendo') + q(4) + wedge('stop')))).toEqual([
      ['crescendo', 'wedge', 0, 3],
    ]);
  });

  test('words in pieces are one text', () => {
    const pieces = direction('<words>poco a poco</words><words font-style="italic">cresc.</words>');
    expect(hairpins(bars(pieces + q(4), dynamic('f') + q(4)))).toEqual([['crescendo', 'words', 0, 3]]);
  });
});

describe('slurs', () => {
  const slur = (...ends: string[]): { notations: string } => ({
    notations: ends.map((end) => `<slur type="${end.split(' ')[0]}" number="${end.split(' ')[1] ?? 1}"/>`).join(''),
  });
  const slurred = (part: Part): string => part.notes.map((n) => (n.slurredFromPrevious ? '~' : '.')).join('');

  // MusicXML 4.0, slur: number distinguishes overlapping slurs; the first note under a slur is tongued: common practice.
  test('within and across bars, chained at one note', () => {
    const chained = { notations: '<slur type="stop" number="1"/><slur type="start" number="1"/>' };
    const part = bars(
      note('C4', 1, slur('start')) + q() + note('E4', 1, chained) + q(),
      note('E4', 1, slur('stop')) + q(3),
    );
    expect(slurred(part)).toBe('.~~~~...');
    expect(part.notes.map((n) => n.slurredToNext)).toEqual([true, true, true, true, false, false, false, false]);
  });

  test('a start written before the stop of the same number, and slurs side by side', () => {
    const turned = { notations: '<slur type="start" number="1"/><slur type="stop" number="1"/>' };
    expect(
      slurred(bars(note('C4', 1, slur('start')) + note('D4', 1, turned) + note('E4', 1, slur('stop')) + q())),
    ).toBe('.~~.');
    expect(
      slurred(
        bars(
          note('C4', 1, slur('start')) +
            note('D4', 1, slur('stop')) +
            note('E4', 1, slur('start')) +
            note('F4', 1, slur('stop')),
        ),
      ),
    ).toBe('.~.~');
  });

  test('nested: a long slur over short ones joins everything', () => {
    const part = bars(
      note('C4', 1, slur('start 1', 'start 2')) +
        note('D4', 1, slur('stop 2')) +
        note('E4', 1, slur('start 2')) +
        note('F4', 1, slur('stop 2', 'stop 1')),
    );
    expect(slurred(part)).toBe('.~~~');
  });

  test('a slur over a rest does not join the notes beside the rest', () => {
    expect(slurred(bars(note('C4', 1, slur('start')) + q() + note('r', 1) + note('E4', 1, slur('stop'))))).toBe('.~.');
  });

  test('a dot under the end of a slur is kept', () => {
    const end = { notations: '<slur type="stop"/><articulations><staccato/></articulations>' };
    const part = bars(note('C4', 1, slur('start')) + note('D4', 1, end) + q(2));
    expect(part.notes[1]).toMatchObject({
      slurredFromPrevious: true,
      slurredToNext: false,
      articulations: ['staccato'],
    });
  });

  test('a slur that never ends is left out and remarked on', () => {
    const part = bars(q() + note('C4', 1, slur('start')) + q(2), q(4));
    expect(slurred(part)).toBe('........');
    expect(remarksOf(part)).toContain('Bar 1: a slur begins and has no end.');
  });

  test('a slur into the first ending does not reach a second ending without slur', () => {
    const first = '<barline location="left"><ending number="1" type="start"/></barline>';
    const firstEnd =
      '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>';
    const second = '<barline location="left"><ending number="2" type="start"/></barline>';
    const part = bars(
      q(2) + note('E4', 2, slur('start')),
      first + note('F4', 4, slur('stop')) + firstEnd,
      second + q(4),
    );
    expect(slurred(part)).toBe('...~.......');
  });

  test('a slur goes on into the second ending when it is printed to end there', () => {
    const first = '<barline location="left"><ending number="1" type="start"/></barline>';
    const firstEnd =
      '<barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline>';
    const second = '<barline location="left"><ending number="2" type="start"/></barline>';
    const part = bars(
      q(2) + note('E4', 2, slur('start')),
      first + note('F4', 4, slur('stop')) + firstEnd,
      second + note('G4', 4, slur('stop')),
    );
    expect(slurred(part)).toBe('...~...~');
  });
});

describe('signs at notes', () => {
  test('articulations keep their MusicXML names', () => {
    const names = ['staccato', 'staccatissimo', 'tenuto', 'accent', 'strong-accent', 'detached-legato'];
    const part = bars(
      ...names.map((name) => note('C4', 4, { notations: `<articulations><${name}/></articulations>` })),
    );
    expect(part.notes.map((n) => n.articulations)).toEqual(names.map((name) => [name]));
  });

  test('breath mark and caesura belong to the note before them', () => {
    const part = bars(
      note('C4', 2, { notations: '<articulations><breath-mark/></articulations>' }) +
        note('D4', 2, { notations: '<articulations><caesura/></articulations>' }),
      q(4),
    );
    expect(part.notes.map((n) => n.breathAfter)).toEqual(['breath', 'caesura', null, null, null, null]);
  });

  test('ornaments by name', () => {
    const part = bars(
      note('C4', 2, { notations: '<ornaments><trill-mark/><wavy-line type="start"/></ornaments>' }) +
        note('D4', 2, { notations: '<ornaments><inverted-mordent/></ornaments>' }),
    );
    expect(part.notes.map((n) => n.ornament)).toEqual(['trill-mark', 'inverted-mordent']);
  });

  test('signs at any of tied notes count for the one note', () => {
    const part = bars(
      note('C4', 4, { tie: ['start'], notations: '<articulations><accent/></articulations>' }),
      note('C4', 4, { tie: ['stop'], notations: '<fermata/>' }),
    );
    expect(part.notes).toHaveLength(1);
    expect(part.notes[0]).toMatchObject({ fermata: true, articulations: ['accent'], durationQuarters: 8 });
  });

  // Common practice: a fermata on a rest holds the silence, not the note before it; one over a barline is a pause there.
  test('fermata on a note, on a rest, over a barline', () => {
    const rest = '<note><rest/><duration>2</duration><voice>1</voice><notations><fermata/></notations></note>';
    const pause = '<barline location="right"><bar-style>light-light</bar-style><fermata/></barline>';
    const part = bars(
      note('C4', 2, { notations: '<fermata type="upright"/>' }) + rest,
      note('D4', 4) + pause,
      note('E4', 4) + pause,
    );
    expect(part.notes.map((n) => n.fermata)).toEqual([true, false, false]);
    expect(part.notes.map((n) => n.heldRestBefore ?? false)).toEqual([false, true, true]);
    expect(part.notes.map((n) => n.breathAfter)).toEqual([null, 'caesura', null]);
  });
});

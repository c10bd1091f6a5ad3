import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchRoster } from '../../src/batch/plan/match-roster.js';
import { namePattern } from '../../src/batch/plan/name-pattern.js';
import { readByPieces } from '../../src/batch/plan/read-by-pieces.js';
import { type DateOrder, readDates } from '../../src/batch/plan/read-dates.js';
import { type RosterLine, readRoster } from '../../src/batch/plan/read-roster.js';
import { inWords } from '../helpers/in-words.js';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const whole = 'file,player,date,instrument,part\nada.wav,Ada Lindqvist,2026-03-02,flute,etude\n';
const ada = {
  file: 'ada.wav',
  player: 'Ada Lindqvist',
  date: '2026-03-02',
  instrument: 'flute',
  part: 'etude',
  further: {},
};

describe('a roster', () => {
  // A byte order mark is EF BB BF (RFC 3629, section 6); spreadsheets write semicolons where the comma is the decimal
  // sign (common practice); line ends are CR LF in RFC 4180 and LF elsewhere.
  it.each([
    ['with commas', whole],
    ['with semicolons', whole.replaceAll(',', ';')],
    ['with a byte order mark', `\uFEFF${whole}`],
    ['with CR LF', whole.replaceAll('\n', '\r\n')],
    ['with quotes', whole.replace('Ada Lindqvist', '"Ada Lindqvist"')],
    ['with heads in capitals and spaces', whole.replace('file,player', ' File , PLAYER ')],
    ['with empty lines', whole.replace('\n', '\n\n,,,,\n')],
    ['without the last line break', whole.trim()],
  ])('is read %s', (_what, text) => {
    expect(readRoster(utf8(text))).toEqual([
      { line: text.startsWith('file,player,date,instrument,part\n\n') ? 4 : 2, ...ada },
    ]);
  });

  it('may have its columns in any order, and only some of them', () => {
    expect(readRoster(utf8('player;file\nAda;a.wav\n'))).toEqual([
      { line: 2, file: 'a.wav', player: 'Ada', date: '', instrument: '', part: '', further: {} },
    ]);
  });

  // csv-stringify writes as RFC 4180 has it.
  it('keeps commas, quotes and line breaks inside quotes', () => {
    const text = fc.string({ unit: 'grapheme' }).map((t) => t.normalize('NFC').trim());
    fc.assert(
      fc.property(text, fc.constantFrom(',', ';'), (player, delimiter) => {
        const csv = stringify(
          [
            ['player', 'file'],
            [player, 'a.wav'],
          ],
          { delimiter, quoted: true },
        );
        expect(readRoster(utf8(csv))[0]?.player).toBe(player);
      }),
    );
  });

  it.each([
    ['an empty file', '', 'line 1: the file is empty'],
    ['no head “file”', 'player,date\nAda,2026-03-02\n', 'line 1: the head “file” is missing'],
    ['a head left empty', 'file,,player\na.wav,12,Ada\n', 'line 1: head 2 is empty'],
    ['a head twice', 'file,player,player\na.wav,A,B\n', 'line 1: a head stands there twice'],
    [
      'a day that is none',
      'file,date\na.wav,2026-03-02\nb.wav,2026-02-30\n',
      'line 3: the cell under “date” is no day',
    ],
    ['a day in words', 'file,date\na.wav,2 March\n', 'line 2: the cell under “date” is no day'],
    ['no file', 'file,player\n,Ada\n', 'line 2: the cell under “file” is empty'],
    ['too many cells', 'file,player\na.wav,Lindqvist, Ada\n', 'line 2: there are 3 cells, and 2 heads'],
    ['a quote left open', 'file,player\na.wav,"Ada\n', 'the quotes of a cell do not match'],
  ])('with %s is answered with the line', (_what, text, message) => {
    expect(inWords(() => readRoster(utf8(text)))).toThrow(message);
  });

  it('repeats no cell in its answers, because it may be a name', () => {
    for (const text of ['file,date\nAda.wav,yesterday\n', 'file,player\nAda.wav,Ada,Ada\n', 'file\n"Ada']) {
      expect(inWords(() => readRoster(utf8(text)))).toThrow(/^(?!.*Ada)/);
    }
  });

  // Excel on German and English machines: a byte order mark, semicolons or commas, a line that names the sign; "Unicode text"
  // is UTF-16 with tabs (common practice). FF FE is the mark of UTF-16LE (RFC 2781, 3.2).
  it.each([
    ['its sign named in a first line', utf8(`sep=;\r\n${whole.replaceAll(',', ';')}`), 3],
    ['tabs', utf8(whole.replaceAll(',', '\t')), 2],
    ['UTF-16', new Uint8Array([0xff, 0xfe, ...Buffer.from(whole.replaceAll(',', '\t'), 'utf16le')]), 2],
  ])('is read with %s', (_what, bytes, line) => {
    expect(readRoster(bytes)).toEqual([{ line, ...ada }]);
  });

  it('keeps further columns by their heads as written, but for empty cells', () => {
    const text =
      'Datei;Name;Stuhl;Klasse;E-Mail\nada.wav;Ada Lindqvist;1;9b;"ada@school.example"\nben.wav;Ben Ito;2;;\n';
    expect(readRoster(utf8(text)).map(({ file, player, further }) => ({ file, player, further }))).toEqual([
      {
        file: 'ada.wav',
        player: 'Ada Lindqvist',
        further: { Stuhl: '1', Klasse: '9b', 'E-Mail': 'ada@school.example' },
      },
      { file: 'ben.wav', player: 'Ben Ito', further: { Stuhl: '2' } },
    ]);
  });

  it('takes a column for a further one when the usual head is there as well', () => {
    const [line] = readRoster(utf8('file,player,name\na.wav,Ada Lindqvist,Lindqvist\n'));
    expect(line).toMatchObject({ player: 'Ada Lindqvist', further: { name: 'Lindqvist' } });
  });

  // F6 is "ö" in ISO 8859-1 and no UTF-8.
  it('that is not UTF-8 is refused', () => {
    expect(inWords(() => readRoster(new Uint8Array([...utf8('file,player\na.wav,J'), 0xf6, 0x72, 0x67])))).toThrow(
      'not UTF-8',
    );
  });
});

describe('days as a roster writes them', () => {
  const days = (texts: string, order?: DateOrder): string[] =>
    readDates(
      texts.split(',').map((text, i) => ({ line: i + 2, text })),
      order,
    );

  // By hand. Day, month and year: in that order in Germany and Britain, month first in the United States, year first in ISO 8601.
  it.each([
    ['2026-03-02,2026/3/2,20260302', '2026-03-02,2026-03-02,2026-03-02'],
    ['2.3.2026,02.03.26,2. 3. 2026', '2026-03-02,2026-03-02,2026-03-02'],
    ['02.03.2026 00:00', '2026-03-02'],
    ['13/2/2026,3/2/2026', '2026-02-13,2026-02-03'],
    ['2/13/2026,2/3/2026', '2026-02-13,2026-02-03'],
    ['2026-03-02,,13/2/2026,3/2/2026', '2026-03-02,,2026-02-13,2026-02-03'],
    ['3/3/2026', '2026-03-03'],
    ['29/02/2028', '2028-02-29'],
  ])('%s are learnt from the column', (texts, expected) => {
    expect(days(texts)).toEqual(expected.split(','));
  });

  it.each([
    ['dmy', '2026-02-03'],
    ['mdy', '2026-03-02'],
  ] as const)('are read as --dates %s says', (order, expected) => {
    expect(days('3/2/2026,2026-02-03,3.2.2026', order)).toEqual([expected, '2026-02-03', expected]);
  });

  it('are asked about where two readings are possible', () => {
    expect(inWords(() => days('2026-03-02,3/3/2026,3/2/2026'))).toThrow(
      'line 4: is this 3 February 2026 or 2 March 2026? Say --dates dmy or --dates mdy',
    );
  });

  it.each([
    ['13/2/2026,2/13/2026', undefined, 'line 3'],
    ['13/2/2026', 'mdy', 'line 2'],
    ['30/02/2026', undefined, 'line 2'],
    ['2/3', undefined, 'line 2'],
    ['yesterday', undefined, 'line 2'],
  ] as const)('%s with %s are refused with their line', (texts, order, message) => {
    expect(inWords(() => days(texts, order))).toThrow(`${message}: the cell under “date” is no day`);
  });
});

describe('which take a line names', () => {
  const take = (file: string) => ({ file, path: `/takes/${file}` });
  const line = (number: number, file: string): RosterLine => ({
    line: number,
    file,
    player: '',
    date: '',
    instrument: '',
    part: '',
    further: {},
  });
  const takes = [take('week 1/ada.wav'), take('week 2/ada.wav'), take('ben.wav'), take('Zoë.wav')];
  const matched = (...lines: RosterLine[]) => {
    const { byPath, unused } = matchRoster(lines, takes);
    return { found: [...byPath].map(([path, { line: number }]) => [path, number]), unused };
  };

  it('is found by path, by name, with the ending or without it, in either form of an accent', () => {
    expect(
      matched(
        line(2, 'week 1/ada.wav'),
        line(3, 'week 2/ada'),
        line(4, 'ben'),
        line(5, 'Zoe\u0308.wav'.normalize('NFC')),
      ),
    ).toEqual({
      found: [
        ['/takes/week 1/ada.wav', 2],
        ['/takes/week 2/ada.wav', 3],
        ['/takes/ben.wav', 4],
        ['/takes/Zoë.wav', 5],
      ],
      unused: [],
    });
  });

  it('is not guessed when several have the name, nor taken twice', () => {
    expect(inWords(() => matched(line(7, 'ada.wav')))).toThrow('line 7: 2 takes have this name; write the folder, too');
    expect(inWords(() => matched(line(2, 'ben.wav'), line(3, 'ben')))).toThrow(
      'line 3: line 2 names this take already',
    );
  });

  it('may be none', () => {
    expect(matched(line(2, 'cy.wav'), line(3, 'ben'))).toEqual({ found: [['/takes/ben.wav', 3]], unused: [2] });
  });
});

const NOTHING = { player: null, date: null, instrument: null, part: null };

describe('a pattern of names', () => {
  it.each([
    ['{date}_{player}', '2026-03-02_Ada-Lindqvist', { player: 'Ada Lindqvist', date: '2026-03-02' }],
    ['{date}_{player}', '20260302_Ada_Lind', { player: 'Ada Lind', date: '2026-03-02' }],
    ['{player}_{date}', 'Ada_Berg-Lind_2026-03-02', { player: 'Ada Berg-Lind', date: '2026-03-02' }],
    [
      '{instrument} - {player} - {part}',
      'horn - Ben Ito - etude 3',
      { instrument: 'horn', player: 'Ben Ito', part: 'etude 3' },
    ],
    ['{player}.{skip}', 'Ada.take 2', { player: 'Ada' }],
    ['take ({player}) [{date}]', 'take (Ada) [2026-03-02]', { player: 'Ada', date: '2026-03-02' }],
  ])('%s reads %s', (pattern, name, facts) => {
    expect(namePattern(pattern)(name)).toEqual({ ...NOTHING, ...facts });
  });

  it.each([
    ['{date}_{player}', 'Ada_2026-03-02'],
    ['{date}_{player}', '2026-02-30_Ada'],
    ['{player}_{date}', 'Ada'],
    ['{player}', ''],
  ])('%s does not read %j', (pattern, name) => {
    expect(namePattern(pattern)(name)).toBeNull();
  });

  it.each([
    ['{name}', '{name} is no field'],
    ['{player}{date}', 'something must stand between two fields'],
    ['{player}_{player}', 'only once'],
    ['take', 'names no field'],
    ['{skip}', 'names no field'],
    ['{player', 'braces'],
    ['{date}/{player}', 'slashes'],
  ])('%s is refused', (pattern, message) => {
    expect(inWords(() => namePattern(pattern))).toThrow(message);
  });

  it('finds its own names again', () => {
    const word = fc.stringMatching(/^[A-Za-z]{1,8}( [A-Za-z]{1,8})?$/);
    fc.assert(
      fc.property(word, word, (player, instrument) => {
        expect(namePattern('{date}_{player}_{instrument}')(`2026-03-02_${player}_${instrument}`)).toMatchObject({
          player,
          instrument,
        });
      }),
    );
  });

  // Reference: the engine's own regular expressions (ECMA-262, 22.2.2), with as few letters a field as will do.
  it('reads as a regular expression does', () => {
    const shapes = {
      player: '.+?',
      instrument: '.+?',
      part: '.+?',
      skip: '.*?',
      date: '\\d{4}[-_.]?\\d{2}[-_.]?\\d{2}',
    };
    const fields = fc.shuffledSubarray(Object.keys(shapes) as (keyof typeof shapes)[], { minLength: 1 });
    const between = fc.stringMatching(/^[ab_]{1,2}$/);
    const name = fc
      .array(fc.constantFrom('a', 'b', '_', '\u{1f3b5}', '2026-03-02', '20260309', '\n'), { maxLength: 14 })
      .map((pieces) => pieces.join(''));
    fc.assert(
      fc.property(fields, fc.array(between, { minLength: 6, maxLength: 6 }), name, (order, texts, text) => {
        const shape = order.map((field, i) => `(?<${field}>${shapes[field]})${i + 1 < order.length ? texts[i] : ''}`);
        const reference = new RegExp(`^${shape.join('')}$`, 'u').exec(text)?.groups;
        const pieces = order.flatMap((field, i) => [
          { field },
          ...(i + 1 < order.length ? [{ text: [...texts[i]!] }] : []),
        ]);
        const read = readByPieces(pieces, text);
        expect(read === null ? null : Object.fromEntries(read)).toEqual(
          reference === undefined ? null : { ...reference },
        );
      }),
      { numRuns: 2000 },
    );
  });

  it('comes to an end with any name', () => {
    const read = namePattern('{player}_{instrument}_{part}_{date}');
    expect(read('_'.repeat(255))).toBeNull();
    expect(read('_'.repeat(100_000))).toBeNull();
    const worst = namePattern('{player}_{instrument}_{part}_{skip}_{date}');
    for (let length = 55; length <= 255; length += 1) expect(worst('_'.repeat(length))).toBeNull();
  });
});

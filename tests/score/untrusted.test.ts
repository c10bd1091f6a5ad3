import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { InputError, type InputErrorCode } from '../../src/base/index.js';
import { readPart } from '../../src/score/index.js';
import { inWords, saidOf } from '../helpers/in-words.js';
import { remarksOf } from '../helpers/remarks-of.js';
import { attributes, bytesOf, note, scoreOf } from './score-of.js';

const plain = new TextDecoder().decode(scoreOf([attributes(1) + note('C4', 4)]));
const withTitle = (title: string): string =>
  plain.replace('<part-list>', `<work><work-title>${title}</work-title></work><part-list>`);
const withDoctype = (doctype: string): string => plain.replace('<score-partwise', `${doctype}\n<score-partwise`);

function refused(bytes: Uint8Array, code: InputErrorCode, message: RegExp): void {
  expect(() => readPart(bytes)).toThrow(InputError);
  expect(inWords(() => readPart(bytes))).toThrow(
    expect.objectContaining({ code, message: expect.stringMatching(message) }),
  );
}

/** ZIP application note (PKWARE), 4.3.12: the central header 0x02014b50 keeps the uncompressed size at offset 24. */
function withClaimedSize(zip: Uint8Array, sizeBytes: number): Uint8Array {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.length);
  for (let i = 0; i < zip.length - 28; i++)
    if (view.getUint32(i, true) === 0x02014b50) view.setUint32(i + 24, sizeBytes, true);
  return zip;
}

describe('what is not a score', () => {
  test('an empty file', () => refused(new Uint8Array(0), 'empty-file', /0 bytes/));
  test('a recording', () => refused(bytesOf('RIFF....WAVEfmt '), 'not-musicxml', /neither XML nor a compressed score/));
  test('another document', () => refused(bytesOf('<html><body/></html>'), 'not-musicxml', /<html>.*score-partwise/));
  test('a score cut off, with the line', () =>
    refused(
      bytesOf(`<?xml version="1.0"?>\n<score-partwise>\n<part id="P1">\n<measure number="1">\n<note>`),
      'not-musicxml',
      /line \d/,
    ));
  test('tags that cross, with the line', () =>
    refused(bytesOf('<score-partwise>\n<part id="P1">\n</score-partwise>\n</part>'), 'not-musicxml', /line 3/));
  test('a part without notes', () =>
    refused(scoreOf([attributes(1) + note('r', 4)]), 'score-without-notes', /no part with a note/));
  test('a score without parts', () =>
    refused(bytesOf('<score-partwise/>'), 'score-without-notes', /no part with a note/));
});

// XML 1.0, sections 2.8 (document type), 4.1 (character references), 4.6 (the five entities).
describe('document types and entities', () => {
  test('the line every notation program writes is accepted', () => {
    const doctype =
      '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';
    expect(readPart(bytesOf(withDoctype(doctype))).notes).toHaveLength(1);
    expect(readPart(bytesOf(withDoctype('<!DOCTYPE score-partwise SYSTEM "partwise.dtd">'))).notes).toHaveLength(1);
  });

  test('definitions of its own are refused: expanding entities', () => {
    const laughs = '<!DOCTYPE score-partwise [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]>';
    refused(bytesOf(withDoctype(laughs).replace('Flute', '&b;')), 'score-refused', /document type definitions/);
  });

  test('definitions of its own are refused: files from elsewhere', () => {
    const outside = '<!DOCTYPE score-partwise [<!ENTITY x SYSTEM "file:///etc/hostname">]>';
    refused(bytesOf(withDoctype(outside).replace('Flute', '&x;')), 'score-refused', /document type definitions/);
    const both = '<!DOCTYPE score-partwise PUBLIC "-//X//EN" "x.dtd" [ <!ENTITY % p SYSTEM "y.dtd"> %p; ]>';
    refused(bytesOf(withDoctype(both)), 'score-refused', /document type definitions/);
  });

  test('the five entities and character references are read, others stay as they are', () => {
    const part = readPart(
      bytesOf(withTitle('Fl&#252;te &amp; Horn &lt;A&gt; &#x266D; &quot;x&quot; &apos;y&apos; &foo;')),
    );
    expect(part.title).toBe('Flüte & Horn <A> ♭ "x" \'y\' &foo;');
  });

  test('an entity is not decoded twice', () => {
    expect(readPart(bytesOf(withTitle('&amp;lt;'))).title).toBe('&lt;');
  });
});

describe('size and depth', () => {
  test('elements nested 200 deep are refused', () => {
    const deep = `${'<a>'.repeat(200)}${'</a>'.repeat(200)}`;
    refused(bytesOf(plain.replace('<part-list>', `${deep}<part-list>`)), 'score-refused', /deeper than 100/);
  });

  test('a hundred thousand levels neither crash nor take long', () => {
    const deep = `${'<a>'.repeat(100_000)}${'</a>'.repeat(100_000)}`;
    refused(bytesOf(plain.replace('<part-list>', `${deep}<part-list>`)), 'score-refused', /deeper than 100/);
  });

  test('a bomb is not inflated', () => {
    const bomb = zipSync({ 'score.xml': new Uint8Array(20 * 1024 * 1024) }, { level: 9 });
    expect(bomb.length).toBeLessThan(1024 * 1024);
    refused(bomb, 'score-refused', /200-fold/);
  });

  test('a large document is not read', () => {
    refused(new Uint8Array(49 * 1024 * 1024).fill(0x3c), 'score-refused', /49 MB large; at most 16 MB/);
  });

  test('a compressed score that would be too large is not inflated', () => {
    const noise = Uint8Array.from({ length: 400 * 1024 }, (_, i) => Math.imul(i + 1, 2654435761) >>> 24);
    refused(
      withClaimedSize(zipSync({ 'score.xml': noise }, { level: 0 }), 60 * 1024 * 1024),
      'score-refused',
      /60 MB large/,
    );
  });

  test('a bomb that lies about its size is not inflated either', () => {
    const bomb = zipSync({ 'score.xml': new Uint8Array(80 * 1024 * 1024).fill(0x20) }, { level: 9 });
    withClaimedSize(bomb, 1000);
    const before = process.memoryUsage().arrayBuffers;
    expect(() => readPart(bomb)).toThrow(InputError);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(20 * 1024 * 1024);
  });

  test('names that every object already has do no harm', () => {
    const named = (name: string): Uint8Array =>
      bytesOf(plain.replace('<part-list>', `<${name} ${name}="x">z</${name}><part-list>`));
    for (const name of ['__proto__', 'constructor']) refused(named(name), 'score-refused', /not safe to read/);
    expect(readPart(named('valueOf')).notes).toHaveLength(1);
  });

  test('repeats without end are cut off', () => {
    const part = readPart(
      scoreOf([
        `${attributes(1)}${note('C4', 4)}<barline location="right"><repeat direction="backward" times="999999999"/></barline>`,
      ]),
    );
    expect(part.bars).toHaveLength(20_000);
    expect(remarksOf(part)).toContain('The repeats ask for more bars than anyone plays; the rest is left out.');
  });

  // Law: damaged bytes give an InputError or a part, never another error.
  test('damage anywhere in a score is met with a clear error or read', () => {
    const original = bytesOf(withTitle('Damaged'));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(original.length - 1), fc.integer({ min: 0, max: 255 })), {
          minLength: 1,
          maxLength: 6,
        }),
        (hits) => {
          const bytes = original.slice();
          for (const [at, value] of hits) bytes[at] = value;
          try {
            expect(readPart(bytes).notes.length).toBeGreaterThan(0);
          } catch (error) {
            expect(error).toBeInstanceOf(InputError);
            expect((saidOf(error) as InputError).message).not.toMatch(/\n/);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

// XML 1.0, section 4.3.3 and appendix F: byte order marks.
describe('encodings', () => {
  const title = 'Étude für Älteste';
  const utf16 = (text: string, littleEndian: boolean): Uint8Array => {
    const bytes = new Uint8Array(2 * (text.length + 1));
    const view = new DataView(bytes.buffer);
    for (const [i, char] of [...`\uFEFF${text}`].entries()) view.setUint16(2 * i, char.charCodeAt(0), littleEndian);
    return bytes;
  };
  const declared = (encoding: string): string => withTitle(title).replace('UTF-8', encoding);

  test('UTF-8 with byte order mark', () => {
    expect(readPart(bytesOf(`\uFEFF${withTitle(title)}`)).title).toBe(title);
  });
  test('UTF-16, both orders', () => {
    expect(readPart(utf16(declared('UTF-16'), true)).title).toBe(title);
    expect(readPart(utf16(declared('UTF-16'), false)).title).toBe(title);
  });
  test('ISO-8859-1 when declared', () => {
    const bytes = Uint8Array.from(declared('ISO-8859-1'), (char) => char.charCodeAt(0));
    expect(readPart(bytes).title).toBe(title);
  });
});

// MusicXML 4.0, compressed .mxl files: META-INF/container.xml, the first rootfile is the score.
describe('compressed scores', () => {
  const container = (path: string): Uint8Array =>
    bytesOf(
      `<?xml version="1.0"?><container><rootfiles><rootfile full-path="${path}" media-type="application/vnd.recordare.musicxml+xml"/><rootfile full-path="page.pdf" media-type="application/pdf"/></rootfiles></container>`,
    );

  test('the root file is the one the container names', () => {
    const zip = zipSync({
      'META-INF/container.xml': container('music/part.musicxml'),
      'other.xml': bytesOf('<html/>'),
      'music/part.musicxml': bytesOf(withTitle('Packed')),
    });
    expect(readPart(zip).title).toBe('Packed');
  });

  test('without container the score file is found', () => {
    expect(readPart(zipSync({ 'part.xml': bytesOf(withTitle('Bare')) })).title).toBe('Bare');
  });

  test('without a score in it', () => {
    refused(zipSync({ 'readme.txt': bytesOf('hello') }), 'not-musicxml', /no MusicXML file/);
    refused(
      zipSync({ 'META-INF/container.xml': container('gone.xml') }),
      'not-musicxml',
      /not the file its container names/,
    );
  });

  test('damaged', () => {
    const zip = zipSync({ 'part.xml': bytesOf(withTitle('Bare')) });
    refused(zip.slice(0, zip.length - 30), 'not-musicxml', /damaged/);
  });
});

// MusicXML 4.0, score-timewise: measures hold parts instead of parts measures.
describe('parts', () => {
  const list =
    '<part-list><score-part id="P1"><part-name>Drums</part-name></score-part><score-part id="P2"><part-name>Horn in F</part-name></score-part><score-part id="P3"><part-name>Tuba</part-name></score-part></part-list>';
  const drum = '<note><unpitched/><duration>4</duration><voice>1</voice></note>';
  const partwise = bytesOf(
    `<score-partwise>${list}<part id="P1"><measure number="1">${attributes(1)}${drum}</measure><measure number="2">${drum}</measure></part><part id="P2"><measure number="1">${attributes(1)}${note('G4', 4)}</measure><measure number="2">${note('A4', 4)}</measure></part><part id="P3"><measure number="1">${attributes(1)}${note('C2', 4)}</measure><measure number="2">${note('D2', 4)}</measure></part></score-partwise>`,
  );
  const timewise = bytesOf(
    `<score-timewise>${list}<measure number="1"><part id="P1">${attributes(1)}${drum}</part><part id="P2">${attributes(1)}${note('G4', 4)}</part><part id="P3">${attributes(1)}${note('C2', 4)}</part></measure><measure number="2"><part id="P1">${drum}</part><part id="P2">${note('A4', 4)}</part><part id="P3">${note('D2', 4)}</part></measure></score-timewise>`,
  );

  test('timewise reads as partwise', () => {
    expect(readPart(timewise)).toEqual(readPart(partwise));
  });

  test('the first part with notes, or the one asked for by id, name or number', () => {
    expect(readPart(partwise)).toMatchObject({ partName: 'Horn in F', printedBars: 2 });
    for (const part of ['P3', 'tuba', '3'])
      expect(readPart(partwise, { part }).notes.map((n) => n.writtenMidi)).toEqual([36, 38]);
  });

  test('a part that is not there', () => {
    expect(inWords(() => readPart(partwise, { part: 'Oboe' }))).toThrow(
      expect.objectContaining({
        code: 'bad-option',
        message: 'there is no part "Oboe"; the score has: Drums, Horn in F, Tuba',
      }),
    );
    expect(() => readPart(partwise, { part: 'Drums' })).toThrow(
      expect.objectContaining({ code: 'score-without-notes' }),
    );
  });
});

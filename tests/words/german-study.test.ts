import { beforeAll, describe, expect, it } from 'vitest';
import type { Language } from '../../src/base/index.js';
import { applyBrief, readBrief } from '../../src/brief/index.js';
import { readDemoScore } from '../../src/demo/index.js';
import { drawStudySheet } from '../../src/report/index.js';
import { toStudyDocument } from '../../src/result/index.js';
import { engravingCopy, readPart } from '../../src/score/index.js';
import { studyPlan } from '../../src/study/index.js';
import { wordsIn } from '../../src/words/words-in.js';
import { ENGLISH_WORDS } from '../helpers/english-words.js';
import { lix } from '../helpers/lix.js';
import { type InspectedPdf, inspectPdf } from '../helpers/pdf-tools.js';
import { CHANGES, PATTERNS, studySentences } from '../helpers/study-facts.js';
import { attributes, direction, dynamic, note, scoreOf, wedge, words } from '../score/score-of.js';

const german = wordsIn('de').study;

/** What the teacher wrote stays as written, so it is German here as well. */
const BRIEF = 'title: Die Fähre\nwatch:\n  - { bar: 9, toBar: 10, reason: "Keep the triplets equal!" }\n';
const QUOTED = 'Keep the triplets equal!';

async function draw(score: Uint8Array, language: Language, page = BRIEF): Promise<InspectedPdf> {
  const part = readPart(score);
  const brief = readBrief(page, part);
  const plan = { ...studyPlan(part, brief), partName: 'Klarinette in B' };
  const creationDate = new Date('2000-01-01T00:00:00Z');
  const content = { plan, part: applyBrief(part, brief), musicXml: engravingCopy(score) };
  return inspectPdf(await drawStudySheet({ ...content, paper: 'a4', language, creationDate }));
}

/** Every kind of trap, a hairpin, changes of tempo, a fermata, rests of many lengths, and faults of a copyist. */
const HARD = scoreOf([
  attributes(4, 1) +
    direction('<metronome><beat-unit>quarter</beat-unit><per-minute>132.5</per-minute></metronome>') +
    dynamic('p') +
    note('F#4', 4) +
    note('C#5', 4, { accidental: 'sharp' }) +
    note('C#5', 4) +
    note('C6', 4),
  note('C5', 4) + note('r', 2) + note('D5', 2) + note('E5', 8, { notations: '<fermata/>' }),
  dynamic('f') + note('Bb4', 4, { accidental: 'flat' }) + wedge('crescendo') + note('G4', 4) + note('A4', 8),
  note('Bb4', 8, { accidental: 'sharp' }) + note('r', 1) + note('G4', 7) + wedge('stop'),
  words('rit.') + note('G4', 20),
  note('A4', 16, { notations: '<slur type="start" number="1"/>' }),
  note('G4', 6),
  note('G4', 16),
]);

describe('a German study sheet', () => {
  let pdf: InspectedPdf;
  let text = '';

  beforeAll(async () => {
    pdf = await draw(readDemoScore(), 'de');
    text = pdf.pageTexts.join('\n').replace(/\s+/g, ' ');
  });

  // Source: BCP 47; ISO 14289-1, 7.1 (title), 7.2 (natural language).
  it('says that it is German, in its title as well', () => {
    expect(pdf.catalog['/Lang']).toBe('u:de');
    expect(pdf.title).toBe('Die Fähre – Übeblatt');
    expect(pdf.faults).toBe('');
    expect(pdf.unmarked).toEqual([]);
  });

  it('has the same structure as the English one: headings, figures with a text, tables', async () => {
    const english = await draw(readDemoScore(), 'en');
    const tree = ({ elements }: InspectedPdf) => elements.map(({ tag, depth }) => `${depth} ${tag}`);
    expect(tree(pdf)).toEqual(tree(english));
    expect(pdf.bookmarks.map(({ depth }) => depth)).toEqual(english.bookmarks.map(({ depth }) => depth));
    for (const { tag, alternative } of pdf.elements) if (tag === 'Figure') expect(alternative).toMatch(/Takt/);
  });

  it('quotes the teacher as written, and has no other English word left', () => {
    expect(text).toContain(QUOTED);
    expect(text.replaceAll(QUOTED, '')).not.toMatch(ENGLISH_WORDS);
    for (const { alternative } of pdf.elements) expect(alternative ?? '').not.toMatch(ENGLISH_WORDS);
    for (const { title } of pdf.bookmarks) expect(title).not.toMatch(ENGLISH_WORDS);
  });

  it('has no English word left for a part with every kind of trap and with faults', async () => {
    const hard = await draw(HARD, 'de', 'title: Die Fähre');
    const said = hard.pageTexts.join('\n').replace(/\s+/g, ' ');
    expect(said.replace(/\brit\b/g, '')).not.toMatch(ENGLISH_WORDS);
    expect(said).toMatch(/Takt 5 ist zu lang: Er enthält 5 Viertel, die Taktart verlangt 4 Viertel/);
    expect(said).toMatch(/bei 132,5 Vierteln in der Minute/);
    expect(said.replaceAll('= 132.5', '')).not.toMatch(/\d\.\d/);
  });

  it('has the words of German music lessons, decimal commas, and H and B in their places', () => {
    for (const heading of ['Noten, die man leicht falsch liest', 'Wo du atmest', 'Fermaten', 'Übe mit Bedacht'])
      expect(text).toContain(heading);
    expect(text).toContain('gilt noch. Spiel H, nicht B.');
    expect(text).toContain('endet am Taktstrich. Spiel C, nicht Cis.');
    expect(text).toMatch(/5,2 s/);
    expect(text).not.toMatch(/\d\.\d/);
  });
});

describe('German note names with their octaves', () => {
  // Source: Helmholtz 1863: c′ is the middle C, the octave below it has small letters, the next capitals, then indices.
  it.each([
    ['C', 0, 4, 'c′'],
    ['A', 0, 4, 'a′'],
    ['B', -1, 5, 'b″'],
    ['B', 0, 5, 'h″'],
    ['F', 1, 3, 'fis'],
    ['E', -1, 2, 'Es'],
    ['B', 0, 2, 'H'],
    ['F', 0, 1, 'F₁'],
    ['C', 0, 7, 'c″″'],
    ['C', 0, 6, 'c″′'],
  ] as const)('%s %d %d is %s', (step, alter, octave, name) => {
    expect(german.plan.pitchWithOctave({ step, alter, octave })).toBe(name);
  });
});

describe('what a study sheet says in German', () => {
  const sentences = studySentences('de');
  const short = [
    ...PATTERNS.map((groups) => german.plan.articulation(groups)),
    ...CHANGES.map((change) => german.plan.tempoChange(change)),
    german.places.note('4', 2.2),
    german.places.barList(['1', '2', '3', '7', '9']),
  ];

  it.each([...sentences.map(([, said]) => said), ...short])('%s: is German', (said) => {
    expect(said).not.toMatch(ENGLISH_WORDS);
    expect(said).not.toMatch(/undefined|NaN|["”]|\d\.\d/);
    expect(said).not.toMatch(/\b(?:Sie haben|Ihre|Ihnen)\b/);
  });

  // Björnsson 1968: 40 is light fiction, 50 plain non-fiction.
  it.each(sentences)('%s: is read without help at thirteen: %s', (_, said) => {
    expect([said, lix(said) <= 50]).toEqual([said, true]);
  });

  it('is light as a whole', () => {
    expect(lix(sentences.map(([, said]) => said).join(' '))).toBeLessThanOrEqual(40);
  });

  it('has forms for one and for many', () => {
    const { page, places } = german;
    expect(page.traps.more(1)).toBe('Noch eine Note dieser Art.');
    expect(page.breaths.long('3', '3', 12)).toMatch(/^Takt 3 dauert 12 Sekunden/);
    expect(page.breaths.long('3', '5', 12)).toMatch(/^Die Takte 3–5 dauern/);
    expect(places.barList(['4'])).toBe('Takt 4');
    const every = Array.from({ length: 40 }, (_, i) => String(2 * i + 1));
    expect(places.barList(every)).toBe('Takt 1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23 und 28 weitere');
  });
});

describe('the data of a German study sheet', () => {
  it('name their language, tell sentences in it, and keep codes and numbers', () => {
    const part = readPart(readDemoScore());
    const plan = studyPlan(part, readBrief('', part));
    const [own, english] = [toStudyDocument(plan, 'de'), toStudyDocument(plan, 'en')] as Record<string, unknown>[];
    expect(own).toMatchObject({ language: 'de', bars: 20, range: { lowest: { name: 'f′', writtenMidi: 65 } } });
    expect(english).not.toHaveProperty('language');
    expect([own?.breaths, own?.levels]).toEqual([english?.breaths, english?.levels]);
    const { title: _, partName: __, ...rest } = own as Record<string, unknown>;
    const said = JSON.stringify(rest).replace(/"beat":"quarter"|"[\w-]+":|"[a-z]+(?:-[a-z]+)+"/g, ' ');
    expect(said).not.toMatch(ENGLISH_WORDS);
  });
});

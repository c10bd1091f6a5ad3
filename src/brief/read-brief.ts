import type { Document, LineCounter, Node } from 'yaml';
import { InputError } from '../base/index.js';
import type { Part } from '../score/index.js';
import { atTempo } from './apply-brief.js';
import { BriefNode } from './brief-node.js';
import { defaultBrief } from './default-brief.js';
import { loadYaml } from './load-yaml.js';
import { readBar, readNotePlace } from './places.js';
import { readTempo } from './read-tempo.js';
import { readContrast, readCriteria, readFermata, readHairpin, readIntonation } from './read-thresholds.js';
import type { Brief, BriefBreath, BriefWatch } from './types.js';

const LARGEST_BRIEF = 64 * 1024;
const WAYS = ['as-written', 'all-slurred', 'under-tempo'] as const;
const KINDS = ['full', 'quick'] as const;
/** Faults whose usual words speak to programmers. */
const YAML_FAULTS: Readonly<Record<string, 'second-page' | 'field-twice'>> = {
  MULTIPLE_DOCS: 'second-page',
  DUPLICATE_KEY: 'field-twice',
};
const FIELDS = [
  'title',
  'tempo',
  'played',
  'breaths',
  'watch',
  'fermata',
  'contrast',
  'hairpin',
  'intonation',
  'criteria',
] as const;

/**
 * Reads a teacher's brief. Every field may be left out; an empty page is a brief.
 *
 * @param text YAML 1.2, at most 64 KB, without references from one place to another
 * @param part the part it is for
 * @returns the brief with every field filled in
 * @throws InputError `bad-brief`: the line, what stands there and what is allowed
 *
 * Source: YAML 1.2.2; the fields: definition.
 */
export function readBrief(text: string, part: Part): Brief {
  if (text.length > LARGEST_BRIEF) {
    throw new InputError('brief-too-long', { letters: text.length, most: LARGEST_BRIEF });
  }
  const fields = openPage(text).fields(FIELDS);
  const tempo =
    fields.tempo === undefined ? defaultBrief(part).tempo : readTempo(fields.tempo, defaultBrief(part).tempo);
  const standing = defaultBrief(atTempo(part, tempo));
  const played = fields.played?.oneOf(WAYS) ?? standing.played;
  const criteria = fields.criteria === undefined ? standing.criteria : readCriteria(fields.criteria, standing.criteria);
  const breaths = fields.breaths === undefined ? standing.breaths : readBreaths(fields.breaths, part);
  return {
    title: fields.title?.text() ?? standing.title,
    tempo,
    played,
    breaths,
    ownBreaths: JSON.stringify(breaths) !== JSON.stringify(standing.breaths),
    watch: fields.watch === undefined ? standing.watch : fields.watch.list().map((item) => readWatch(item, part)),
    fermata: fields.fermata === undefined ? standing.fermata : readFermata(fields.fermata, part, standing.fermata),
    contrast:
      fields.contrast === undefined ? standing.contrast : readContrast(fields.contrast, part, standing.contrast),
    hairpin: fields.hairpin === undefined ? standing.hairpin : readHairpin(fields.hairpin, standing.hairpin),
    intonation:
      fields.intonation === undefined ? standing.intonation : readIntonation(fields.intonation, standing.intonation),
    criteria: judgedWhenPlayed(played, criteria),
  };
}

/** Slurred for practice, articulation says nothing; below the tempo, tempo says nothing. */
function judgedWhenPlayed(played: Brief['played'], criteria: Brief['criteria']): Brief['criteria'] {
  if (played === 'all-slurred') return { ...criteria, articulation: { ...criteria.articulation, judged: false } };
  if (played === 'under-tempo') return { ...criteria, tempo: { ...criteria.tempo, judged: false } };
  return criteria;
}

function openPage(text: string): BriefNode {
  const lines = new (loadYaml().LineCounter)();
  const document = parsed(text, lines);
  const fault = document.errors[0];
  if (fault !== undefined) {
    if (/call stack/i.test(fault.message)) throw tooDeep();
    const said = fault.message.replace(/\s+/g, ' ').replace(/\.$/, '');
    const { line } = lines.linePos(fault.pos[0]);
    throw new InputError('brief-not-yaml', { line, what: YAML_FAULTS[fault.code] ?? 'other', said });
  }
  return new BriefNode(document.contents as Node | null, '', lines, document.contents?.range?.[0] ?? 0);
}

function parsed(text: string, lineCounter: LineCounter): Document.Parsed {
  try {
    return loadYaml().parseDocument(text, { lineCounter, prettyErrors: false, merge: false });
  } catch (error) {
    if (error instanceof RangeError) throw tooDeep();
    throw error;
  }
}

/** A page nested deeper than its reader can follow. */
function tooDeep(): InputError {
  return new InputError('brief-too-deep');
}

function readBreaths(node: BriefNode, part: Part): BriefBreath[] {
  const breaths = new Map<number, BriefBreath>();
  for (const item of node.list()) {
    const { after, kind } = item.fields(['after', 'kind']);
    if (after === undefined) return item.fail('brief-no-place', {});
    const breath = kind?.oneOf(KINDS) ?? 'quick';
    for (const { index, bar, beat, pass } of readNotePlace(after, part)) {
      if (breaths.has(index)) item.fail('brief-place-twice', {});
      breaths.set(index, { index, bar, beat, pass, kind: breath });
    }
  }
  return [...breaths.values()].sort((a, b) => a.index - b.index);
}

function readWatch(item: BriefNode, part: Part): BriefWatch {
  const { bar, toBar, reason } = item.fields(['bar', 'toBar', 'reason']);
  if (bar === undefined) return item.fail('brief-no-bar', {});
  const from = readBar(bar, part);
  const to = toBar === undefined ? from : readBar(toBar, part);
  const order = (name: string) => part.bars.findIndex((b) => b.bar === name);
  if (order(to) < order(from)) toBar?.fail('brief-bars-turned', { bar: to, first: from });
  return { bar: from, toBar: to, reason: reason?.text() ?? '' };
}

import type { Part } from '../score/index.js';
import type { BriefNode } from './brief-node.js';
import { CRITERIA } from './criteria.js';
import { readBar } from './places.js';
import type { Brief, ContrastPlace, CriterionWish, FermataRange } from './types.js';

/** Numbers outside these bounds are taken for slips of the pen. Source: working values, far beyond what is ever asked for. */
const LEAST_TIMES = 0.5;
const MOST_TIMES = 20;
const MOST_DB = 40;
const MOST_CENTS = 100;
const MOST_POINTS = 1000;

/**
 * @param node `leastTimes`, `mostTimes` and a list `bars` of the same with a bar each
 * @param part the part
 * @param standing what holds where the page says nothing
 * @returns how long fermatas may last
 * @throws InputError `bad-brief`
 */
export function readFermata(node: BriefNode, part: Part, standing: Brief['fermata']): Brief['fermata'] {
  const fields = node.fields(['leastTimes', 'mostTimes', 'bars']);
  const overall = readTimes(fields, standing);
  const held = new Set(part.notes.filter((note) => note.fermata).map((note) => note.bar));
  const bars = (fields.bars?.list() ?? []).map((item) => {
    const own = item.fields(['bar', 'leastTimes', 'mostTimes']);
    if (own.bar === undefined) return item.fail('brief-no-bar', {});
    const bar = readBar(own.bar, part);
    if (!held.has(bar)) own.bar.fail('brief-no-fermata-there', { bar, bars: [...held] });
    return { bar, ...readTimes(own, overall) };
  });
  return { ...overall, bars };
}

function readTimes(fields: { leastTimes?: BriefNode; mostTimes?: BriefNode }, standing: FermataRange): FermataRange {
  const leastTimes = fields.leastTimes?.number(LEAST_TIMES, MOST_TIMES) ?? standing.leastTimes;
  const mostTimes = fields.mostTimes?.number(LEAST_TIMES, MOST_TIMES) ?? standing.mostTimes;
  if (leastTimes > mostTimes) {
    const range = { least: leastTimes, most: mostTimes };
    fields.leastTimes?.fail('brief-least-above-most', range);
    fields.mostTimes?.fail('brief-most-below-least', range);
  }
  return { leastTimes, mostTimes };
}

/**
 * @param node `leastDb`, and a list `places`, each with a bar or with two marks
 * @param part the part
 * @param standing what holds where the page says nothing
 * @returns how large contrasts must be
 * @throws InputError `bad-brief`
 */
export function readContrast(node: BriefNode, part: Part, standing: Brief['contrast']): Brief['contrast'] {
  const fields = node.fields(['leastDb', 'places']);
  const leastDb = fields.leastDb?.number(0, MOST_DB) ?? standing.leastDb;
  const places = (fields.places?.list() ?? []).map((item): ContrastPlace => {
    const own = item.fields(['bar', 'from', 'to', 'leastDb']);
    if (own.leastDb === undefined) return item.fail('brief-contrast-without-level', {});
    const least = own.leastDb.number(0, MOST_DB);
    if (own.bar !== undefined) {
      (own.from ?? own.to)?.fail('brief-contrast-twice', {});
      return { bar: readMarkedBar(own.bar, part), leastDb: least };
    }
    if (own.from === undefined || own.to === undefined) return item.fail('brief-contrast-nowhere', {});
    const marks = [...new Set(part.dynamics.map(({ mark }) => mark))];
    if (marks.length === 0) own.from.fail('brief-marks-of-none', {});
    return { from: own.from.oneOf(marks), to: own.to.oneOf(marks), leastDb: least };
  });
  return { leastDb, places };
}

function readMarkedBar(node: BriefNode, part: Part): string {
  const bar = readBar(node, part);
  const marked = [...new Set(part.dynamics.map((mark) => mark.bar))];
  if (marked.includes(bar)) return bar;
  return node.fail('brief-no-mark-there', { bar, bars: marked });
}

/**
 * @param node `leastDb`
 * @param standing what holds where the page says nothing
 * @returns how much louder or softer a hairpin must become
 * @throws InputError `bad-brief`
 */
export function readHairpin(node: BriefNode, standing: Brief['hairpin']): Brief['hairpin'] {
  return { leastDb: node.fields(['leastDb']).leastDb?.number(0, MOST_DB) ?? standing.leastDb };
}

/**
 * @param node `watchCents` and `fixCents`
 * @param standing what holds where the page says nothing
 * @returns from where on a note is out of tune
 * @throws InputError `bad-brief`
 */
export function readIntonation(node: BriefNode, standing: Brief['intonation']): Brief['intonation'] {
  const fields = node.fields(['watchCents', 'fixCents']);
  const watchCents = fields.watchCents?.number(1, MOST_CENTS) ?? standing.watchCents;
  const fixCents = fields.fixCents?.number(1, MOST_CENTS) ?? Math.max(standing.fixCents, watchCents);
  if (watchCents > fixCents) fields.fixCents?.fail('brief-fix-below-watch', { fixCents, watchCents });
  return { watchCents, fixCents };
}

/**
 * @param node each criterion with its points, or `off`
 * @param standing what holds where the page says nothing
 * @returns what is judged, and what it is worth
 * @throws InputError `bad-brief`
 */
export function readCriteria(node: BriefNode, standing: Brief['criteria']): Brief['criteria'] {
  const fields = node.fields(CRITERIA);
  const wishes = CRITERIA.map((name): [string, CriterionWish] => {
    const wish = fields[name];
    if (wish === undefined) return [name, standing[name]];
    if (wish.is('off')) return [name, { judged: false, points: 0 }];
    return [name, { judged: true, points: wish.number(0, MOST_POINTS, true) }];
  });
  return Object.fromEntries(wishes) as Brief['criteria'];
}

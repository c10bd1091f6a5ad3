import type { Part } from '../score/index.js';
import { CRITERIA } from './criteria.js';
import { defaultBrief } from './default-brief.js';
import { roundBeat } from './places.js';
import type { Brief, BriefBreath } from './types.js';

/**
 * A brief to start from: every field with the value it has anyhow, and what it means.
 *
 * @param part the part it is for
 * @returns YAML that reads back as the default brief of the part
 *
 * Source: YAML 1.2.2; JSON texts are YAML scalars (1.2.2, 1.3).
 */
export function writeStarterBrief(part: Part): string {
  const brief = defaultBrief(part);
  const sections = [
    head(part),
    title(brief),
    tempo(brief),
    played(),
    breaths(part, brief),
    watch(part),
    fermata(part, brief),
    contrast(part, brief),
    thresholds(brief),
    criteria(brief),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** Comments may hold whatever a title holds, but only on their own line. */
function comment(text: string): string {
  return `# ${text.replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ').trim()}`;
}

function head(part: Part): string[] {
  return [
    comment(`A brief for ${part.title || 'an étude'} (${part.partName || 'part'}), ${part.printedBars} bars.`),
    '# Change what you like. Whatever you delete goes back to what the part says; an empty page is a brief, too.',
    '# Bars are the printed numbers. Beats count from 1 and may be fractions: 2.5 is the "and" of beat 2.',
  ];
}

function title(brief: Brief): string[] {
  return brief.title === '' ? ['# title: "…"'] : [`title: ${JSON.stringify(brief.title)}`];
}

function tempo(brief: Brief): string[] {
  const about = [
    '# Quarter notes a minute, and the slowest and fastest that still count as this tempo.',
    '# Another beat is written so:  beat: dotted-quarter  and  bpm: 60  (then lowest and highest count the same beat).',
  ];
  if (brief.tempo === null) {
    return [
      ...about,
      '# The part marks no tempo. Without one here, tempo is not judged.',
      '# tempo:',
      '#   quarterBpm: 80',
    ];
  }
  const { quarterBpm, lowestQuarterBpm, highestQuarterBpm } = brief.tempo;
  const lines = [`quarterBpm: ${quarterBpm}`, `lowest: ${lowestQuarterBpm}`, `highest: ${highestQuarterBpm}`];
  return [...about, 'tempo:', ...lines.map((line) => `  ${line}`)];
}

function played(): string[] {
  return [
    '# as-written; all-slurred: for practice without the tongue, articulation is then not judged;',
    '# under-tempo: for slow practice, tempo is then not judged.',
    'played: as-written',
  ];
}

function breaths(part: Part, brief: Brief): string[] {
  const about = [
    '# Breaths, each after the note that begins there: full where the music leaves time, quick elsewhere.',
    '# With pass: 2 a breath counts for the second time only.',
  ];
  if (brief.breaths.length === 0) {
    const first = part.notes[0];
    const example = `#   - { after: { bar: ${key(first?.bar ?? '1')}, beat: ${roundBeat(first?.beat ?? 1)} }, kind: quick }`;
    return [...about, '# The part marks none.', '# breaths:', example];
  }
  return [...about, 'breaths:', ...breathLines(part, brief.breaths)];
}

/** One line a printed place; a line for each pass where the passes differ. */
function breathLines(part: Part, all: readonly BriefBreath[]): string[] {
  const places = new Map<string, BriefBreath[]>();
  for (const breath of all) {
    const place = `${breath.bar}/${roundBeat(breath.beat)}`;
    places.set(place, [...(places.get(place) ?? []), breath]);
  }
  return [...places.values()].flatMap((group) => {
    const first = group[0] as BriefBreath;
    const beat = roundBeat(first.beat);
    const notes = part.notes.filter((note) => note.bar === first.bar && !note.grace && roundBeat(note.beat) === beat);
    const same = group.length === notes.length && group.every(({ kind }) => kind === first.kind);
    return (same ? [first] : group).map(({ bar, pass, kind }) => {
      const place = `bar: ${key(bar)}, beat: ${beat}${same ? '' : `, pass: ${pass}`}`;
      return `  - { after: { ${place} }, kind: ${kind} }`;
    });
  });
}

/** A bar's number as it can stand in YAML. */
function key(bar: string): string {
  return /^[1-9]\d{0,8}$/.test(bar) ? bar : JSON.stringify(bar);
}

function watch(part: Part): string[] {
  const bar = key(part.notes[Math.floor(part.notes.length / 2)]?.bar ?? '1');
  return [
    '# Bars you want looked at, with the reason; toBar for more than one.',
    '# watch:',
    `#   - { bar: ${bar}, reason: "Keep the eighths equal." }`,
  ];
}

function fermata(part: Part, brief: Brief): string[] {
  const bar = key(part.notes.find((note) => note.fermata)?.bar ?? '1');
  return [
    '# How long a fermata lasts, times its written length. About twice is usual.',
    'fermata:',
    `  leastTimes: ${brief.fermata.leastTimes}`,
    `  mostTimes: ${brief.fermata.mostTimes}`,
    '  # For one bar:',
    '  # bars:',
    `  #   - { bar: ${bar}, leastTimes: 1.5, mostTimes: 2 }`,
  ];
}

function contrast(part: Part, brief: Brief): string[] {
  const [from = 'p', to = 'f'] = [...new Set(part.dynamics.map(({ mark }) => mark))];
  return [
    '# How much neighbouring dynamic marks must differ, in decibels. Less than 3 is hardly heard; 6 is plain.',
    'contrast:',
    `  leastDb: ${brief.contrast.leastDb}`,
    '  # At one bar, or wherever one mark follows another:',
    '  # places:',
    `  #   - { from: ${from}, to: ${to}, leastDb: 6 }`,
  ];
}

function thresholds(brief: Brief): string[] {
  return [
    '# How much a crescendo must grow and a diminuendo fade, in decibels.',
    'hairpin:',
    `  leastDb: ${brief.hairpin.leastDb}`,
    '',
    '# From how many cents on a note is worth a listen, and from how many it is to be fixed. 100 cents are a semitone.',
    'intonation:',
    `  watchCents: ${brief.intonation.watchCents}`,
    `  fixCents: ${brief.intonation.fixCents}`,
  ];
}

function criteria(brief: Brief): string[] {
  return [
    '# What counts, and for how many points; off for what is not judged. Points support a panel, they never replace one.',
    'criteria:',
    ...CRITERIA.map((name) => `  ${name}: ${brief.criteria[name].points}`),
  ];
}

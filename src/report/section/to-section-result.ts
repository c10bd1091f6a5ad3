import { notMeasured } from '../../base/index.js';
import type { Part } from '../../score/index.js';
import { rounded } from '../result/rounding.js';
import type { ResultFinding, TakeResult } from '../result/take-result-schema.js';
import { wordsFor } from '../words/finding-words.js';
import { concernsWholeTake, placeInWords } from '../words/place.js';
import { groupBy } from './group-by.js';
import { type SectionResult, type SectionTake, sectionResultSchema } from './section-result-schema.js';

/** Everything the section's document is assembled from. */
export interface SectionInput {
  readonly tool: { readonly name: string; readonly version: string };
  readonly score: { readonly file: string; readonly sha256: string };
  readonly part: Part;
  /** in the order in which they are to be listed; the name is the one the take's own documents are written under */
  readonly takes: readonly NamedResult[];
  /** takes that got no document */
  readonly failures: readonly { readonly file: string; readonly code: string; readonly message: string }[];
}

/**
 * Brings the takes of one review together: who needs what, and which bars trouble the section as a whole. A finding is
 * counted in the bar where it begins; findings about a whole take count in no bar.
 *
 * @param input the takes' results and the failures
 * @returns the section's document
 *
 * Source: definition.
 */
export function toSectionResult(input: SectionInput): SectionResult {
  const bars = [...new Set(input.part.bars.toSorted((a, b) => a.barIndex - b.barIndex).map((bar) => bar.bar))];
  return sectionResultSchema.parse({
    format: 'section-result',
    version: 1,
    tool: { name: input.tool.name, version: input.tool.version },
    score: {
      file: input.score.file,
      sha256: input.score.sha256,
      title: input.part.title,
      part: input.part.partName,
      transposeSemitones: input.part.transposeSemitones,
      bars: input.part.printedBars,
      notes: input.part.notes.length,
    },
    players: new Set(input.takes.map(playerOf)).size,
    bars,
    takes: input.takes.map(({ name, result }) => takeLine(name, result, bars)),
    troubles: troublesOf(input.takes, bars),
    failures: input.failures.map(({ file, code, message }) => ({ file, code, message })),
  });
}

type NamedResult = { readonly name: string; readonly result: TakeResult };

/** Who played: by name, or else each take is taken for a player of its own. */
const playerOf = ({ name, result }: NamedResult) => result.take.player ?? name;

const isTrouble = (finding: ResultFinding) => finding.weight !== 'well';

function takeLine(name: string, result: TakeResult, bars: readonly string[]): SectionTake {
  const troubles = result.findings.filter(isTrouble);
  const reviewed = result.outcome === 'reviewed';
  const reason = 'notMeasured' in result.tempo ? result.tempo.notMeasured : 'the take was not reviewed';
  return {
    name,
    file: result.take.file,
    player: result.take.player,
    date: result.take.date,
    outcome: result.outcome,
    notesInPart: result.score.notes,
    notesAsWritten: reviewed ? result.notes.filter((n) => n.status === 'as-written').length : notMeasured(reason),
    playedQuarterBpm: 'notMeasured' in result.tempo ? result.tempo : rounded(result.tempo.playedQuarterBpm, 'tempo'),
    centsFromA440: 'notMeasured' in result.tuning ? result.tuning : result.tuning.centsFromA440,
    criteria: result.criteria.map(({ criterion, fix, watch }) => ({ criterion, fix, watch })),
    first: troubles
      .filter((finding) => finding.ledByBar === undefined)
      .slice(0, 3)
      .map((finding) => `${placeInWords(finding)}: ${wordsFor(finding).headline}`),
    barTroubles: barCounts(troubles, bars),
  };
}

function barCounts(troubles: readonly ResultFinding[], bars: readonly string[]): SectionTake['barTroubles'] {
  const placed = troubles.filter((finding) => !concernsWholeTake(finding.kind));
  const order = new Map(bars.map((bar, i) => [bar, i]));
  return [...groupBy(placed, (finding) => finding.bar)]
    .map(([bar, here]) => ({
      bar,
      fix: here.filter((f) => f.weight === 'fix').length,
      watch: here.filter((f) => f.weight === 'watch').length,
    }))
    .sort((a, b) => (order.get(a.bar) ?? bars.length) - (order.get(b.bar) ?? bars.length));
}

function troublesOf(takes: readonly NamedResult[], bars: readonly string[]): SectionResult['troubles'] {
  const order = new Map(bars.map((bar, i) => [bar, i]));
  const place = (bar: string | null) => (bar === null ? -1 : (order.get(bar) ?? bars.length));
  const all = takes.flatMap((take) =>
    take.result.findings.filter(isTrouble).map((finding) => ({ finding, player: playerOf(take) })),
  );
  const groups = groupBy(all, ({ finding }) =>
    JSON.stringify([concernsWholeTake(finding.kind) ? null : finding.bar, finding.kind]),
  );
  return [...groups.values()]
    .map((group) => {
      const { finding } = group[0] as (typeof all)[number];
      const who = [...new Set(group.map(({ player }) => player))];
      return {
        bar: concernsWholeTake(finding.kind) ? null : finding.bar,
        kind: finding.kind,
        criterion: finding.criterion,
        players: who.length,
        fix: new Set(group.filter((one) => one.finding.weight === 'fix').map(({ player }) => player)).size,
        who,
      };
    })
    .sort(
      (a, b) => b.players - a.players || b.fix - a.fix || place(a.bar) - place(b.bar) || (a.kind < b.kind ? -1 : 1),
    );
}

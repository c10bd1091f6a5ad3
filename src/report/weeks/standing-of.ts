import { groupBy } from '../../base/index.js';
import type { MeasureId } from '../../standards/index.js';
import type { BarStory, ProgressPlayer } from '../../weeks/index.js';
import type { WeeksWords } from '../../words/index.js';

type Kind = BarStory['kind'];
type Status = BarStory['status'];

/** Kinds that tell of the same as a measure: where they are told by their bars, the measure is not told again. */
const TOLD_BY: Readonly<Record<MeasureId, readonly Kind[]>> = {
  'as-written': ['accidental', 'wrong-note', 'missed-note', 'added-note'],
  evenness: ['uneven-group'],
  entries: ['late-entry', 'early-entry'],
  fermatas: ['fermata-long', 'fermata-short'],
  tempo: ['off-tempo'],
  steadiness: ['rushing', 'dragging'],
  contrast: ['weak-contrast', 'reversed-contrast'],
  hairpins: ['weak-hairpin', 'reversed-hairpin'],
  slurs: ['slur-broken'],
  staccato: ['staccato-long'],
  breaths: ['breath-unmarked', 'breath-late', 'breath-missed', 'breath-short'],
  'own-tuning': ['note-out-of-tune'],
  tuning: ['tuning-off'],
  'long-notes': ['unsteady-note'],
  'breath-noise': [],
  brightness: [],
  stops: ['restart', 'hesitation', 'skipped-bars'],
};

/** The sentences before this one tell what is done with. */
const WAITING = 2;
const OPEN: readonly Status[] = ['returning', 'still', 'new', 'grown', 'seen'];

/**
 * How a player stands, sentence by sentence: what was mended, what is open, what came new.
 *
 * @param words of the sheet
 * @param player the player with one étude
 * @returns sentences in that order, at least one
 */
export function standingOf(words: WeeksWords, player: ProgressPlayer): string[] {
  const { standing } = words;
  if (player.days.length === 0) return [standing.noTake];
  const topics = (...statuses: readonly Status[]) => topicsOf(words, player, statuses);
  if (player.days.length === 1) return [standing.firstDay(topics('seen'))];
  const told: readonly (readonly [(things: readonly string[]) => string, readonly string[]])[] = [
    [standing.mended, topics('fixed')],
    [standing.better, measuresOf(words, player, 'better', ['fixed'])],
    [standing.nearlyThere, topics('eased')],
    [standing.stillOpen, topics('still', 'seen')],
    [standing.cameBack, topics('returning')],
    [standing.cameNew, topics('new', 'grown')],
    [standing.slippedBack, measuresOf(words, player, 'worse', OPEN)],
    [standing.notHeard, topics('not-judged')],
  ];
  const said = told.flatMap(([say, things]) => (things.length === 0 ? [] : [say(things)]));
  return told.slice(WAITING).every(([, things]) => things.length === 0) ? [...said, standing.nothingOpen] : said;
}

/** One a kind, with all of its bars; what is about the whole has none. */
function topicsOf(
  words: WeeksWords,
  { bars, throughout }: ProgressPlayer,
  statuses: readonly Status[],
): readonly string[] {
  const inBars = groupBy(
    bars.filter(({ status }) => statuses.includes(status)),
    ({ kind }) => kind,
  );
  return [
    ...[...inBars].map(([kind, stories]) => words.topic(kind, [...new Set(stories.map(({ bar }) => bar))])),
    ...throughout.filter(({ status }) => statuses.includes(status)).map(({ kind }) => words.topic(kind, [])),
  ];
}

function measuresOf(
  words: WeeksWords,
  { measures, bars, throughout }: ProgressPlayer,
  verdict: 'better' | 'worse',
  toldWith: readonly Status[],
): readonly string[] {
  const told = new Set(
    [...bars, ...throughout].filter(({ status }) => toldWith.includes(status)).map(({ kind }) => kind),
  );
  return measures
    .filter(
      ({ measure, sinceFirst }) => sinceFirst?.verdict === verdict && !TOLD_BY[measure].some((kind) => told.has(kind)),
    )
    .map(({ measure }) => words.measureInSentence(measure));
}

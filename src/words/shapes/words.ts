import type { CAUTIONS, FAILURES, REASONS, Sayings } from '../../base/index.js';
import type { Criterion, FindingKind } from '../../judge/index.js';
import type { MisreadingKind } from '../../score/index.js';
import type { MeasureId } from '../../standards/index.js';
import type { Dates } from './dates.js';
import type { ExpectedWords } from './expected.js';
import type { FindingsWords, MisreadingsWords, OtherBarsWords } from './findings.js';
import type { HandoutWords } from './handout.js';
import type { Letters } from './letters.js';
import type { ExcerptWords, MarkWords } from './marks.js';
import type { MeasuredInWords } from './measured.js';
import type { MeasureWords } from './measures.js';
import type { Numbers } from './numbers.js';
import type {
  GapWords,
  GlanceWords,
  NotReviewedHeadings,
  NotReviewedWords,
  PageWords,
  SmallPrint,
  TableWords,
} from './page.js';
import type { Place } from './places.js';
import type { RoomWords } from './room.js';
import type { SayingsWords } from './sayings.js';
import type { SectionWords } from './section.js';
import type { StandingWords } from './standing.js';
import type { StudyWords } from './study.js';
import type { WeeksLabels, WeeksSentences, WeeksWords } from './weeks.js';
import type { StandingSentences, TroubleKind, TroubleWords } from './weeks-standing.js';

/** What one folder of words holds. */
export interface Vocabulary {
  readonly numbers: Numbers;
  readonly dates: Dates;
  readonly criteria: Readonly<Record<Criterion, string>>;
  readonly findings: FindingsWords;
  readonly misreadings: MisreadingsWords;
  readonly otherBars: OtherBarsWords;
  readonly sayings: SayingsWords;
  /** why there is no number or no judgement, going on within a sentence */
  readonly reasons: Sayings<typeof REASONS>;
  /** what a reader is to know of a recording */
  readonly cautions: Sayings<typeof CAUTIONS>;
  /** why something could not be done: what was found, what is needed */
  readonly faults: Sayings<typeof FAILURES>;
  readonly expected: ExpectedWords;
  readonly place: (place: Place) => string;
  readonly measured: MeasuredInWords;
  /** of a note as the judges name it, e.g. `B♭`; its octave where that is to be said as well, 4 from the middle C up */
  readonly note: (name: string, octave?: number) => string;
  /** what stands for letters that no face of the pages holds */
  readonly missingLetters: Readonly<Record<Letters, string>>;
  readonly page: PageWords;
  readonly glance: GlanceWords;
  readonly table: TableWords;
  readonly gap: GapWords;
  readonly notReviewed: Readonly<Record<'not-this-score' | 'too-poor', NotReviewedWords>>;
  readonly notReviewedHeadings: NotReviewedHeadings;
  readonly smallPrint: SmallPrint;
  readonly marks: MarkWords;
  readonly excerpt: ExcerptWords;
  readonly room: RoomWords;
  readonly section: SectionWords;
  readonly handout: HandoutWords;
  readonly standing: StandingWords;
  readonly weeksLabels: WeeksLabels;
  readonly weeksSentences: WeeksSentences;
  readonly measures: Readonly<Record<MeasureId, MeasureWords>>;
  readonly weeksStanding: StandingSentences;
  readonly troubles: Readonly<Record<TroubleKind, TroubleWords>>;
  readonly study: StudyWords;
}

/** A finding as documents hold it, as far as its heading goes. */
export interface HeadedFinding {
  readonly kind: FindingKind;
  /** that explains an accidental */
  readonly misreading?: MisreadingKind | undefined;
}

/** Everything that is said to people, in one language. */
export interface Words
  extends Omit<
      Vocabulary,
      'numbers' | 'dates' | 'measures' | 'weeksStanding' | 'troubles' | 'weeksLabels' | 'weeksSentences'
    >,
    Dates {
  /** most decimals shown; trailing zeros are dropped */
  readonly number: (value: number, decimals: number) => string;
  readonly criterion: (criterion: Criterion) => string;
  /** heading and reason of a finding; the reason is empty for praise */
  readonly finding: (finding: HeadedFinding) => { readonly headline: string; readonly why: string };
  /** what pencil marks mean; null for kinds that are not shown in notes */
  readonly caption: (kind: FindingKind) => string | null;
  readonly weeks: WeeksWords;
}

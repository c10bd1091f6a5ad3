import type { Criterion, FindingKind } from '../judge/index.js';
import type { FindingWords, wordsFor } from './finding-words.js';
import type { LISTEN_WORDS } from './listen-words.js';
import type { Measured } from './numbers.js';
import type { Place } from './place.js';
import type { excerptInWords, MARK_NOTES } from './take/mark-words.js';
import type { NOT_REVIEWED_HEADINGS, NOT_REVIEWED_WORDS } from './take/not-reviewed-words.js';
import type { GAP_WORDS, GLANCE_WORDS, PAGE_WORDS, TABLE_WORDS } from './take/page-words.js';
import type { Translated } from './translated.js';

/** Everything a take's pages say, in one language. The English words give the shape; the compiler keeps others complete. */
export interface TakeWords {
  readonly page: Translated<typeof PAGE_WORDS>;
  readonly glance: Translated<typeof GLANCE_WORDS>;
  readonly table: Translated<typeof TABLE_WORDS>;
  readonly gap: Translated<typeof GAP_WORDS>;
  readonly listen: Translated<typeof LISTEN_WORDS>;
  readonly marks: Translated<typeof MARK_NOTES>;
  readonly notReviewed: Translated<typeof NOT_REVIEWED_WORDS>;
  readonly notReviewedHeadings: Translated<typeof NOT_REVIEWED_HEADINGS>;
  readonly smallPrint: Readonly<Record<'practice' | 'panel' | 'teacher' | 'lettersMissing', string>>;
  /** heading and reason of a finding */
  readonly finding: (finding: Parameters<typeof wordsFor>[0]) => FindingWords;
  readonly criterion: (criterion: Criterion) => string;
  /** what pencil marks mean; null for kinds that are not shown in notes */
  readonly caption: (kind: FindingKind) => string | null;
  readonly excerpt: typeof excerptInWords;
  readonly place: (place: Place) => string;
  /** most decimals shown; trailing zeros are dropped */
  readonly number: (value: number, decimals: number) => string;
  readonly measured: (measured: Measured, kind?: FindingKind) => string;
  /** of an ISO 8601 day */
  readonly date: (day: string) => string;
  /** of an ISO 8601 day without its year, and the same for narrow places */
  readonly day: (day: string) => string;
  readonly shortDay: (day: string) => string;
  /** of a note as the judges name it */
  readonly note: (name: string) => string;
}

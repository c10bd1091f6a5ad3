import { wordsOf } from '../rules/words-of.js';
import { CAUTIONS_IN_WORDS } from './cautions.js';
import { CRITERIA } from './criteria.js';
import { DATES } from './dates.js';
import { EXPECTED } from './expected.js';
import { FAULTS_IN_WORDS } from './faults.js';
import { MISREADINGS } from './findings/notes.js';
import { FINDINGS } from './findings.js';
import { HANDOUT } from './handout.js';
import { EXCERPT, MARKS } from './marks.js';
import { measured } from './measured.js';
import { MEASURES } from './measures.js';
import { MISSING_LETTERS } from './missing-letters.js';
import { noteName } from './names.js';
import { NUMBERS } from './numbers.js';
import { OTHER_BARS } from './other-bars.js';
import { GAP, GLANCE, NOT_REVIEWED, NOT_REVIEWED_HEADINGS, PAGE, SMALL_PRINT, TABLE } from './page.js';
import { place } from './places.js';
import { REASONS_IN_WORDS } from './reasons.js';
import { ROOM } from './room.js';
import { SAYINGS } from './sayings.js';
import { SECTION } from './section.js';
import { STANDING } from './standing.js';
import { STUDY_PAGE } from './study/page.js';
import { STUDY_PLACES } from './study/places.js';
import { STUDY_PLAN } from './study/plan.js';
import { WEEKS_SENTENCES } from './weeks.js';
import { WEEKS_LABELS } from './weeks-labels.js';
import { TROUBLES, WEEKS_STANDING } from './weeks-standing.js';

/** Everything that is said, in German. */
export const WORDS = wordsOf({
  numbers: NUMBERS,
  dates: DATES,
  criteria: CRITERIA,
  findings: FINDINGS,
  misreadings: MISREADINGS,
  otherBars: OTHER_BARS,
  sayings: SAYINGS,
  reasons: REASONS_IN_WORDS,
  cautions: CAUTIONS_IN_WORDS,
  faults: FAULTS_IN_WORDS,
  expected: EXPECTED,
  place,
  measured,
  note: noteName,
  missingLetters: MISSING_LETTERS,
  page: PAGE,
  glance: GLANCE,
  table: TABLE,
  gap: GAP,
  notReviewed: NOT_REVIEWED,
  notReviewedHeadings: NOT_REVIEWED_HEADINGS,
  smallPrint: SMALL_PRINT,
  marks: MARKS,
  excerpt: EXCERPT,
  room: ROOM,
  section: SECTION,
  handout: HANDOUT,
  standing: STANDING,
  weeksLabels: WEEKS_LABELS,
  weeksSentences: WEEKS_SENTENCES,
  measures: MEASURES,
  weeksStanding: WEEKS_STANDING,
  troubles: TROUBLES,
  study: { places: STUDY_PLACES, plan: STUDY_PLAN, page: STUDY_PAGE },
});

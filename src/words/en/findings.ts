import type { FindingsWords } from '../shapes/findings.js';
import { ARTICULATION } from './findings/articulation.js';
import { BREATH } from './findings/breath.js';
import { CONTINUITY } from './findings/continuity.js';
import { DYNAMICS } from './findings/dynamics.js';
import { INTONATION } from './findings/intonation.js';
import { NOTES } from './findings/notes.js';
import { PRAISE } from './findings/praise.js';
import { RHYTHM } from './findings/rhythm.js';
import { SOUND } from './findings/sound.js';
import { TEMPO } from './findings/tempo.js';

/** All that is said of findings, kind by kind. */
export const FINDINGS: FindingsWords = {
  ...NOTES,
  ...RHYTHM,
  ...TEMPO,
  ...DYNAMICS,
  ...ARTICULATION,
  ...BREATH,
  ...INTONATION,
  ...CONTINUITY,
  ...SOUND,
  ...PRAISE,
};

import type { Criterion } from '../../judge/index.js';

/** Names of the criteria for reading. */
export const CRITERIA: Readonly<Record<Criterion, string>> = {
  notes: 'Notes',
  rhythm: 'Rhythm',
  tempo: 'Tempo',
  dynamics: 'Dynamics',
  articulation: 'Articulation',
  breath: 'Breath',
  intonation: 'Intonation',
  continuity: 'Continuity',
  sound: 'Sound',
};

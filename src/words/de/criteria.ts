import type { Criterion } from '../../judge/index.js';

/** Names of the criteria for reading. */
export const CRITERIA: Readonly<Record<Criterion, string>> = {
  notes: 'Noten',
  rhythm: 'Rhythmus',
  tempo: 'Tempo',
  dynamics: 'Dynamik',
  articulation: 'Artikulation',
  breath: 'Atmung',
  intonation: 'Intonation',
  continuity: 'Durchspielen',
  sound: 'Klang',
};

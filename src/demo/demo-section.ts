import type { Fault, NoteAddress, TakePlan } from './types.js';

/** One take of the demo section. */
export interface DemoTake {
  /** with the day and the player in it */
  readonly fileName: string;
  readonly player: string;
  /** ISO 8601 day */
  readonly date: string;
  readonly plan: TakePlan;
}

const DAYS = ['2026-03-02', '2026-03-09', '2026-03-16'] as const;
/** Half the usual rate: a clarinet's sound fits, and the files stay small. */
const SAMPLE_RATE_HZ = 22050;

const at = (bar: number, beat: number): NoteAddress => ({ bar: String(bar), beat });

/** One player's three weeks; null where a week was missed. */
interface Player {
  readonly name: string;
  readonly always: Partial<TakePlan>;
  readonly weeks: readonly (Partial<TakePlan> | null)[];
}

const dropped: Fault = { kind: 'misread', at: at(4, 4), misreading: 'dropped-within-bar' };
const carriedB: Fault = { kind: 'misread', at: at(5, 2), misreading: 'carried-past-barline' };
const carriedE: Fault = { kind: 'misread', at: at(14, 1), misreading: 'carried-past-barline' };
const otherOctave: Fault = { kind: 'misread', at: at(11, 3), misreading: 'wrong-octave-applied' };
const flatHairpin: Fault = { kind: 'hairpin', number: 0, share: 0.15 };
const longTriplets: Fault[] = [
  { kind: 'uneven-group', at: at(9, 2), shares: [0.48, 0.26, 0.26] },
  { kind: 'uneven-group', at: at(10, 3), shares: [0.47, 0.27, 0.26] },
  { kind: 'uneven-group', at: at(12, 1), shares: [0.47, 0.27, 0.26] },
];

/** Invented people; any likeness is chance. */
const PLAYERS: readonly Player[] = [
  {
    name: 'Ada Lindqvist',
    always: { tuningCents: 3, timingScatterSeconds: 0.006, vibrato: { rateHz: 5.2, depthCents: 4 } },
    weeks: [
      { faults: [carriedB, { kind: 'fermata', at: at(15, 3), ratio: 3.6 }] },
      { faults: [{ kind: 'fermata', at: at(15, 3), ratio: 3.2 }] },
      {},
    ],
  },
  {
    name: 'Mina Okafor',
    always: { tuningCents: -8 },
    weeks: [
      { contrast: 0.12, tempoFactor: 0.94, faults: [dropped, carriedE, flatHairpin] },
      { contrast: 0.2, tempoFactor: 0.96, faults: [carriedE, flatHairpin] },
      { contrast: 0.9, tempoFactor: 0.98, faults: [flatHairpin] },
    ],
  },
  {
    name: 'Jonas Weiler',
    always: { timingScatterSeconds: 0.01 },
    weeks: [
      {
        tuningCents: 24,
        tempoFactor: 1.02,
        tempoDrift: 1.14,
        faults: [
          ...longTriplets,
          { kind: 'late-entry', at: at(13, 2), seconds: 0.21 },
          { kind: 'restart', after: at(7, 2), resumeAt: at(6, 1), pauseSeconds: 1.2 },
        ],
      },
      null,
      { tuningCents: 9, tempoDrift: 1.04, faults: [...longTriplets.slice(0, 2), { kind: 'staccato', share: 0.86 }] },
    ],
  },
  {
    name: 'Priya Raman',
    always: { tuningCents: 0, roomSeconds: 0.8 },
    weeks: [
      {
        tempoFactor: 0.85,
        faults: [
          otherOctave,
          { kind: 'staccato', share: 0.88 },
          { kind: 'broken-slur', at: at(6, 2) },
          { kind: 'broken-slur', at: at(7, 1.5) },
          { kind: 'pitch-tendency', writtenMidi: 81, cents: 34 },
        ],
      },
      {
        tempoFactor: 0.93,
        faults: [otherOctave, { kind: 'staccato', share: 0.6 }, { kind: 'pitch-tendency', writtenMidi: 81, cents: 30 }],
      },
      { tempoFactor: 0.99, faults: [{ kind: 'pitch-tendency', writtenMidi: 81, cents: 27 }] },
    ],
  },
  {
    name: 'Elif Demir',
    always: { tuningCents: -4, timingScatterSeconds: 0.009 },
    weeks: [
      {
        faults: [
          carriedB,
          { kind: 'missed-note', at: at(10, 2.5) },
          { kind: 'late-entry', at: at(10, 1.5), seconds: 0.19 },
          { kind: 'breath', after: at(17, 1), seconds: 0.4, delaySeconds: 0.25 },
          { kind: 'added-note', after: at(11, 2), semitones: -2 },
        ],
      },
      {
        faults: [
          carriedB,
          { kind: 'late-entry', at: at(10, 1.5), seconds: 0.17 },
          { kind: 'breath', after: at(17, 1), seconds: 0.35, delaySeconds: 0.15 },
        ],
      },
      { contrast: 0.95, faults: [carriedB] },
    ],
  },
];

/**
 * @returns the invented section's takes of the demo étude, one week apart, player by player; each plan is ready to be
 * performed
 */
export function demoSection(): DemoTake[] {
  return PLAYERS.flatMap((player, p) =>
    player.weeks.flatMap((week, w) => {
      if (week === null) return [];
      const date = DAYS[w] as string;
      const seed = 1000 * (p + 1) + w;
      const plan: TakePlan = { seed, voice: 'clarinet', sampleRateHz: SAMPLE_RATE_HZ, ...player.always, ...week };
      return [{ fileName: `${date}_${player.name.replaceAll(' ', '-')}.wav`, player: player.name, date, plan }];
    }),
  );
}

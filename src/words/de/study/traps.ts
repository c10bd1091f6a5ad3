import type { MisreadingKind } from '../../../score/index.js';
import type { PitchName, Trap } from '../../../study/index.js';
import { beatGroups } from '../../rules/beat-groups.js';
import { beatInFigures } from '../../rules/beats.js';
import { signOf } from '../../rules/sign-of.js';
import { listed } from '../lists.js';
import { pitchName } from './places.js';

/**
 * @param trap a place where a pitch is easily misread
 * @returns where in its bar, why, and what to play
 *
 * Source: the rule of accidentals, common practice.
 */
export function trapInWords(trap: Trap): string {
  return `${beats(trap)}: ${REASONS[trap.kind](trap)}`;
}

function beats(trap: Trap): string {
  const { on, after } = beatGroups(trap.beats);
  const places = [...(on.length === 0 ? [] : [`Schlag ${listed(on)}`]), ...after.map((beat) => `nach Schlag ${beat}`)];
  const words = listed(places);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

const REASONS: Readonly<Record<MisreadingKind, (trap: Trap) => string>> = {
  'dropped-within-bar': (trap) => {
    const sign = signOf(first(trap.pitches).alter);
    const from = trap.because === null ? 'von weiter vorn' : beatAt('von', trap.because.beat);
    return `Das ${sign} ${from} gilt noch. ${pair(trap)}`;
  },
  'carried-past-barline': (trap) => {
    const { because } = trap;
    const sign = because === null ? 'Vorzeichen davor' : `${signOf(because.alter)} in Takt ${because.bar}`;
    return `Das ${sign} endet am Taktstrich. ${pair(trap)}`;
  },
  'wrong-octave-applied': (trap) => {
    const { because } = trap;
    const sign =
      because === null ? 'Vorzeichen in diesem Takt' : `${signOf(because.alter)} ${beatAt('auf', because.beat)}`;
    return `Das ${sign} gilt nur in der ${because?.octave === 'higher' ? 'höheren' : 'tieferen'} Oktave. ${pair(trap)}`;
  },
  'key-signature-forgotten': (trap) => {
    const { likely, pitches } = trap;
    if (likely?.why === 'after-sign') {
      const before = pitchName({ step: first(pitches).step, alter: likely.alter });
      return `Nach dem ${before} in Takt ${likely.bar} gelten wieder die Vorzeichen der Tonart. ${pair(trap)}`;
    }
    if (likely?.why === 'beside-natural') {
      const name = pitchName(first(pitches));
      return `Auch direkt neben dem ${pitchName(likely.neighbour)} gelten die Vorzeichen der Tonart. Spiel ${name}.`;
    }
    const which = pitches.length === 1 ? 'Dies ist das erste' : 'Dies sind die ersten';
    return `Die Vorzeichen der Tonart verlangen ${listed(pitches.map((pitch) => pitchName(pitch)))}. ${which}.`;
  },
  'accidental-forgotten': (trap) => `Hier steht ein ${signOf(first(trap.pitches).alter)}. ${pair(trap)}`,
};

function first(pitches: readonly PitchName[]): PitchName {
  return pitches[0] as PitchName;
}

function pair({ pitches, misread }: Trap): string {
  return `Spiel ${pitchName(first(pitches))}, nicht ${pitchName(first(misread))}.`;
}

function beatAt(preposition: 'von' | 'auf', beat: number): string {
  const { text, after } = beatInFigures(beat);
  return `${after ? 'nach' : preposition} Schlag ${text}`;
}

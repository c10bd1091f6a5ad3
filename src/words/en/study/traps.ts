import type { MisreadingKind } from '../../../score/index.js';
import type { PitchName, Trap } from '../../../study/index.js';
import { beatGroups } from '../../rules/beat-groups.js';
import { beatInFigures } from '../../rules/beats.js';
import { signOf } from '../../rules/sign-of.js';
import { listed } from '../lists.js';
import { signedName } from './places.js';

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
  const places = [
    ...(on.length === 0 ? [] : [`${on.length === 1 ? 'beat' : 'beats'} ${listed(on)}`]),
    ...after.map((beat) => `after beat ${beat}`),
  ];
  const words = listed(places);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

const REASONS: Readonly<Record<MisreadingKind, (trap: Trap) => string>> = {
  'dropped-within-bar': (trap) => {
    const sign = signOf(first(trap.pitches).alter);
    const from = trap.because === null ? 'earlier in the bar' : beatAt('from', trap.because.beat);
    return `the ${sign} ${from} still holds. ${pair(trap)}`;
  },
  'carried-past-barline': (trap) => {
    const { because } = trap;
    const sign = because === null ? 'accidental before' : `${signOf(because.alter)} in bar ${because.bar}`;
    return `the ${sign} ended at the barline. ${pair(trap)}`;
  },
  'wrong-octave-applied': (trap) => {
    const { because, pitches } = trap;
    const sign = because === null ? 'accidental in this bar' : `${signOf(because.alter)} ${beatAt('on', because.beat)}`;
    const other = because?.octave === 'higher' ? 'higher' : 'lower';
    return `the ${sign} belongs to the ${other} ${first(pitches).step} only. ${pair(trap)}`;
  },
  'key-signature-forgotten': (trap) => {
    const { likely, pitches } = trap;
    if (likely?.why === 'after-sign') {
      const sign = signedName({ step: first(pitches).step, alter: likely.alter });
      return `after the ${sign} in bar ${likely.bar} the key signature is back. ${pair(trap)}`;
    }
    if (likely?.why === 'beside-natural') {
      const name = signedName(first(pitches));
      return `right beside the ${signedName(likely.neighbour)} the key signature still makes this ${name}.`;
    }
    const which = pitches.length === 1 ? 'this is the first one' : 'these are the first ones';
    return `the key signature asks for ${listed(pitches.map(signedName))}; ${which}.`;
  },
  'accidental-forgotten': (trap) => `a ${signOf(first(trap.pitches).alter)} is printed here. ${pair(trap)}`,
};

function first(pitches: readonly PitchName[]): PitchName {
  return pitches[0] as PitchName;
}

function pair({ pitches, misread }: Trap): string {
  return `Play ${signedName(first(pitches))}, not ${signedName(first(misread))}.`;
}

function beatAt(preposition: 'from' | 'on', beat: number): string {
  const { text, after } = beatInFigures(beat);
  return after ? `after beat ${text}` : `${preposition} beat ${text}`;
}

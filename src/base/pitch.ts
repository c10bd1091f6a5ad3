/** Frequency of A4 in hertz. Source: ISO 16:1975. */
export const A4_HZ = 440;

/** MIDI note number of A4. Source: MIDI 1.0 detailed specification, note numbers (middle C = 60). */
export const A4_MIDI = 69;

/**
 * @param midi note number, may be fractional (0.01 = 1 cent)
 * @returns frequency in Hz in equal temperament at A4 = 440 Hz
 *
 * Source: ISO 16:1975 for A4; equal temperament by definition.
 */
export function midiToHz(midi: number): number {
  return A4_HZ * 2 ** ((midi - A4_MIDI) / 12);
}

/**
 * @param hz frequency in Hz, above 0
 * @returns fractional MIDI note number
 *
 * Source: inverse of {@link midiToHz}.
 */
export function hzToMidi(hz: number): number {
  return A4_MIDI + 12 * Math.log2(hz / A4_HZ);
}

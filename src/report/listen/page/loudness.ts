/** Source: ITU-R BS.1770-5, annex 1: blocks of 400 ms that overlap by three quarters, both gates, the offset. */
const HOP_MS = 100;
const HOPS_A_BLOCK = 4;
const ABSOLUTE_GATE = -70;
const RELATIVE_GATE = -10;
const OFFSET = -0.691;

/**
 * Loudness of a passage as EBU R 128 measures it: what is much softer than the rest does not count.
 *
 * @param kWeighted power of stretches of 0.1 s, tenths of a decibel; null for silence
 * @param fromMs where the passage begins
 * @param toMs where it ends
 * @returns LUFS; null where nothing is loud enough
 *
 * Source: EBU R 128; ITU-R BS.1770-5.
 */
export function gatedLoudness(kWeighted: readonly (number | null)[], fromMs: number, toMs: number): number | null {
  const first = Math.max(0, Math.floor(fromMs / HOP_MS));
  const last = Math.max(first + 1, Math.min(kWeighted.length, Math.ceil(toMs / HOP_MS)));
  const powers = kWeighted.slice(first, last).map((tenths) => (tenths === null ? 0 : 10 ** (tenths / 100)));
  const count = Math.max(1, powers.length - HOPS_A_BLOCK + 1);
  const blocks = Array.from({ length: count }, (_, i) => mean(powers.slice(i, i + HOPS_A_BLOCK)));
  const heard = blocks.filter((power) => lufs(power) > ABSOLUTE_GATE);
  if (heard.length === 0) return null;
  const gate = lufs(mean(heard)) + RELATIVE_GATE;
  return lufs(mean(heard.filter((power) => lufs(power) > gate)));
}

const lufs = (power: number): number => OFFSET + 10 * Math.log10(power);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

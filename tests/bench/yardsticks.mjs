import { spawnSync } from 'node:child_process';

/** Praat's autocorrelation with the settings of its manual, for the range of a clarinet. */
export const PRAAT_SCRIPT = `form Pitch
  sentence file
endform
Read from file: file$
To Pitch (ac): 0.0058, 120, 15, "no", 0.03, 0.45, 0.01, 0.35, 0.14, 2400
`;

/** Other programs on the same file: what it is, and how it is called with a WAV file and praat's script. */
export const YARDSTICKS = [
  ['praat, pitch track (ac)', 'praat', (wav, script) => ['--run', script, wav]],
  [
    'aubio, pitch track (yinfft 2048/256)',
    'aubiopitch',
    (wav) => ['-p', 'yinfft', '-B', '2048', '-H', '256', '-i', wav],
  ],
  ['aubio, onsets (512/256)', 'aubioonset', (wav) => ['-B', '512', '-H', '256', '-i', wav]],
  ['ffmpeg, loudness (EBU R 128)', 'ffmpeg', (wav) => ['-nostats', '-i', wav, '-af', 'ebur128', '-f', 'null', '-']],
];

/**
 * @param {string} program name
 * @param {string[]} words its command line
 * @returns {number | null} seconds of processor it took, its start included; null when it is not installed
 */
export function cpuSecondsOfProgram(program, words) {
  if (spawnSync(program, ['--help'], { stdio: 'ignore' }).error !== undefined) return null;
  // bash times what it runs: user and system, in seconds
  const timed = 'TIMEFORMAT="%U %S"; { time "$@" >/dev/null 2>&1; } 2>&1';
  const { status, stdout } = spawnSync('bash', ['-c', timed, 'bash', program, ...words], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program} ended with status ${status}`);
  return stdout
    .trim()
    .split(' ')
    .reduce((sum, seconds) => sum + Number(seconds), 0);
}

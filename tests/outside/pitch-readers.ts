import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inFolder, printedBy } from './programs.js';

/** A pitch at a moment, as another program heard it. */
export interface HeardPitch {
  readonly seconds: number;
  readonly hertz: number;
}

/** Boersma's autocorrelation with the settings of the manual, a frame every 10 ms; unvoiced frames are left out. */
const PRAAT_SCRIPT = `form Pitch
  sentence file
  real floor
  real ceiling
endform
Read from file: file$
To Pitch (ac): 0.01, floor, 15, "no", 0.03, 0.45, 0.01, 0.35, 0.14, ceiling
frames = Get number of frames
writeInfo: ""
for frame to frames
  hertz = Get value in frame: frame, "Hertz"
  if hertz <> undefined
    seconds = Get time from frame number: frame
    appendInfoLine: seconds, " ", hertz
  endif
endfor
`;

function rowsOf(text: string): HeardPitch[] {
  return text
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .flatMap(([seconds, hertz]) =>
      seconds !== undefined && hertz !== undefined && hertz > 0 ? [{ seconds, hertz }] : [],
    );
}

/**
 * @param wav a WAV file
 * @param floor lowest pitch looked for, hertz; its window holds three periods of it
 * @param ceiling highest pitch looked for, hertz
 * @returns pitch by praat, `To Pitch (ac)`
 */
export function praatPitch(wav: Uint8Array, floor: number, ceiling: number): HeardPitch[] {
  return inFolder((folder) => {
    const [script, file] = [join(folder, 'pitch.praat'), join(folder, 'take.wav')];
    writeFileSync(script, PRAAT_SCRIPT);
    writeFileSync(file, wav);
    return rowsOf(printedBy('praat', ['--run', script, file, String(floor), String(ceiling)]));
  });
}

/**
 * @param wav a WAV file
 * @returns pitch by aubio, yinfft, window 2048, hop 256; a frame is timed by aubio at its beginning
 */
export function aubioPitch(wav: Uint8Array): HeardPitch[] {
  return inFolder((folder) => {
    const file = join(folder, 'take.wav');
    writeFileSync(file, wav);
    return rowsOf(printedBy('aubiopitch', ['-p', 'yinfft', '-B', '2048', '-H', '256', '-i', file]));
  });
}

/** Boersma's harmonics-to-noise ratio by cross-correlation with the settings of the manual, mean over a stretch. */
const HARMONICITY_SCRIPT = `form Harmonicity
  sentence file
  real floor
  real first
  real last
endform
Read from file: file$
To Harmonicity (cc): 0.01, floor, 0.1, 1
mean = Get mean: first, last
writeInfoLine: mean
`;

/**
 * @param wav a WAV file
 * @param floor lowest pitch looked for, hertz
 * @param from seconds
 * @param to seconds
 * @returns harmonics over noise by praat, `To Harmonicity (cc)`, dB
 */
export function praatHarmonicity(wav: Uint8Array, floor: number, from: number, to: number): number {
  return inFolder((folder) => {
    const [script, file] = [join(folder, 'harmonicity.praat'), join(folder, 'take.wav')];
    writeFileSync(script, HARMONICITY_SCRIPT);
    writeFileSync(file, wav);
    return Number(printedBy('praat', ['--run', script, file, String(floor), String(from), String(to)]));
  });
}

export { filterAt, halve } from './filters';
export { byFour, firstByThree, lastByTwo } from './fourier';
export { packPowers, splitPowers, sumBands, unpackLags, windowFrames } from './frames';
export { peakMagnitudes, weighPitches } from './harmonics';
export { fromEveryOtherInt16, fromInt16 } from './integers';
export { frameLevels } from './levels';
export { findPeaks } from './peaks';

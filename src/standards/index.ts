/**
 * What a take is judged by unless the teacher says otherwise: thresholds with their units and sources. Imports nothing.
 */
export { MEASURE_IDS, type MeasureId } from './followed.js';
export { STANDARDS, type Standard, type Standards } from './standards.js';

export { CANDIDATES, type Features } from './types.js';

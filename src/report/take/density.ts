/** How much white the pages have: `tight` where that spares a page that would hold next to nothing. */
export type Density = 'roomy' | 'tight';

/** No recording may be longer, however it is kept. */
export const LONGEST_SECONDS = 3600;

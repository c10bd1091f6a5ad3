/** English words that no German page needs. Spelled the same in both languages and left out: in, so, am, an, also, was, note. */
export const ENGLISH_WORDS =
  /(?<!\p{L})(?:the|and|of|is|are|not|with|to|too|from|you|your|it|its|this|that|than|then|for|by|on|at|one|two|bars?|beats?|notes|cents|sharp|flat|measured|expected|quarter|louder|softer|higher|lower|played|written|practise|practice|take|takes|first|last|time|times|percent|decibels?|January|March|May|sounds?)(?!\p{L})/iu;

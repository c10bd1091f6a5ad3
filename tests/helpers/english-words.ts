/** English words that no German page needs. Spelled the same in both languages and left out: in, so, am, an, also, was, note. */
export const ENGLISH_WORDS =
  /(?<!\p{L})(?:the|and|of|is|are|not|with|to|too|from|you|your|it|its|this|that|than|then|for|by|on|at|one|two|bars?|beats?|notes|cents|sharp|flat|measured|expected|quarter|louder|softer|higher|lower|played|written|practise|practice|take|takes|first|last|time|times|percent|decibels?|January|March|May|sounds?)(?!\p{L})/iu;

/** More of them, which stand on the sheets of a section. Spelled as German words and left out: still, person, register. */
export const ENGLISH_OF_SHEETS =
  /(?<!\p{L})(?:players?|sections?|days?|weeks?|reviewed|judged|found|nothing|none|who|what|where|about|fixed|fix|watch|since|changed?|better|worse|different|file|free|listen|each|everybody|read|working|repeats?|need(?:s|ed)?|month|year|measure|works?|still there|slurs?|hairpins?|breaths?|entries|contrast(?=s)|steadiness|evenness)(?!\p{L})/iu;

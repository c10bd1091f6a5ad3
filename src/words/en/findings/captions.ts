/** Under excerpts in which a note came at another time than written. */
export const ARROW = 'The arrow goes from where the note is written to where it came.';

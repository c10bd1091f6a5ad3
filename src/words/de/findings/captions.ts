/** Under excerpts in which a note came at another time than written. */
export const ARROW = 'Der Pfeil geht von dort, wo die Note steht, dorthin, wo sie kam.';

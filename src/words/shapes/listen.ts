/** What follows the label of a button of the listening room. Places come as "Bar 7, beat 2" or "Bars 5–8". */
export interface ListenWords {
  /** for those who cannot see which finding the button belongs to */
  readonly ofPlace: (place: string) => string;
}

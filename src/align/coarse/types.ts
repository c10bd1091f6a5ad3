/** One uninterrupted stretch of playing through the part. */
export interface Run {
  readonly firstNote: number;
  readonly lastNote: number;
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** rough onset of each note from firstNote to lastNote; NaN for one that was hardly heard */
  readonly onsets: readonly number[];
}

/** Where the player is in the part, roughly, and how well it fits. */
export interface CoarsePath {
  readonly runs: readonly Run[];
  /** matched minus mismatched sounding time over all sounding time, -1 to 1 */
  readonly fit: number;
  /** share of the part's notes that take time that were heard, 0 to 1 */
  readonly heard: number;
  /** the same of the notes that the runs go over, grace notes among them */
  readonly heardOfReached: number;
}

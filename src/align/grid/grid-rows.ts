/** More semitones than ever have evidence at a time; what is beyond them is left out. */
const MOST_A_FRAME = 24;

/** Gathers the evidence of a grid frame by frame: a few semitones each, of the sixty or so there are. */
export class GridRows {
  readonly rowStart: Int32Array;
  readonly place: Uint16Array;
  readonly salience: Float32Array;
  readonly byPeriod: Float32Array;
  private frame = 0;
  private end = 0;

  /** @param frames frames of the grid; memory that is not written to is none in practice */
  constructor(frames: number) {
    this.rowStart = new Int32Array(frames + 1);
    this.place = new Uint16Array(frames * MOST_A_FRAME);
    this.salience = new Float32Array(frames * MOST_A_FRAME);
    this.byPeriod = new Float32Array(frames * MOST_A_FRAME);
  }

  /** Adds the evidence of one semitone, each only once, to the frame at hand. */
  add(place: number, salience: number, byPeriod: number): void {
    if (this.end - this.rowStart[this.frame]! === MOST_A_FRAME) return;
    this.place[this.end] = place;
    this.salience[this.end] = salience;
    this.byPeriod[this.end] = byPeriod;
    this.end += 1;
  }

  endRow(): void {
    this.frame += 1;
    this.rowStart[this.frame] = this.end;
  }
}

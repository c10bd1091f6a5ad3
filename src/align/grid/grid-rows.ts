import { CANDIDATES } from '../../features/index.js';

/** A candidate lies between two semitones. */
const MOST_A_FRAME = 2 * CANDIDATES;

/** Gathers the evidence of a grid frame by frame: a few semitones each, of the sixty or so there are. */
export class GridRows {
  readonly rowStart: Int32Array;
  readonly place: Uint16Array;
  readonly salience: Float32Array;
  private frame = 0;
  private end = 0;

  /** @param frames frames of the grid; memory that is not written to is none in practice */
  constructor(frames: number) {
    this.rowStart = new Int32Array(frames + 1);
    this.place = new Uint16Array(frames * MOST_A_FRAME);
    this.salience = new Float32Array(frames * MOST_A_FRAME);
  }

  /** Adds evidence to the frame at hand; of several pieces for one semitone the strongest stays, and what is 0 or less does not count. */
  add(place: number, value: number): void {
    if (value <= 0) return;
    let at = this.rowStart[this.frame]!;
    while (at < this.end && this.place[at] !== place) at++;
    if (at === this.end) this.place[this.end++] = place;
    else if (value <= this.salience[at]!) return;
    this.salience[at] = value;
  }

  endRow(): void {
    this.frame += 1;
    this.rowStart[this.frame] = this.end;
  }
}

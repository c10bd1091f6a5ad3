/** More semitones than ever have evidence at a time; what is beyond them is left out. */
const MOST_A_FRAME = 24;
/** Room is made for so many; where it does not do, half as much again is made. */
const USUAL_A_FRAME = 5;
const GROWTH = 1.5;

/** Gathers the evidence of a grid frame by frame: a few semitones each, of the sixty or so there are. */
export class GridRows {
  readonly rowStart: Int32Array;
  /** these are replaced when more room is made: to be asked for when everything is in them */
  place: Uint16Array;
  salience: Float32Array;
  byPeriod: Float32Array;
  private frame = 0;
  private end = 0;

  /** @param frames frames of the grid */
  constructor(frames: number) {
    const room = frames * USUAL_A_FRAME + MOST_A_FRAME;
    this.rowStart = new Int32Array(frames + 1);
    this.place = new Uint16Array(room);
    this.salience = new Float32Array(room);
    this.byPeriod = new Float32Array(room);
  }

  /** Adds the evidence of one semitone, each only once, to the frame at hand. */
  add(place: number, salience: number, byPeriod: number): void {
    if (this.end - this.rowStart[this.frame]! === MOST_A_FRAME) return;
    if (this.end === this.place.length) this.grow();
    this.place[this.end] = place;
    this.salience[this.end] = salience;
    this.byPeriod[this.end] = byPeriod;
    this.end += 1;
  }

  private grow(): void {
    const room = Math.ceil(GROWTH * this.end);
    const [place, salience, byPeriod] = [new Uint16Array(room), new Float32Array(room), new Float32Array(room)];
    place.set(this.place);
    salience.set(this.salience);
    byPeriod.set(this.byPeriod);
    [this.place, this.salience, this.byPeriod] = [place, salience, byPeriod];
  }

  endRow(): void {
    this.frame += 1;
    this.rowStart[this.frame] = this.end;
  }
}

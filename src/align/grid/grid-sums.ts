import type { PitchGrid } from './pitch-grid.js';

/** Frames in a page: a power of two, about a second and a half. */
const PAGE_BITS = 8;
const PAGE_FRAMES = 1 << PAGE_BITS;
/** Pages kept at a time, about eighteen seconds; a search looks back a few. */
const MOST_PAGES = 12;

/**
 * Evidence of each semitone from the beginning up to any frame. Sums are kept for the first frame of each page; those in
 * between are made a page at a time when they are asked for, and given up again, the oldest first. They are the same
 * numbers every time, for they are added up in the same order.
 *
 * Source: definition (summed-area sums).
 */
export class GridSums {
  private readonly grid: PitchGrid;
  private readonly starts: Float64Array;
  /** sums of the pages that are kept, frame-major; empty for the others */
  private readonly pages: Float64Array[];
  private readonly kept: number[] = [];
  private oldest = 0;

  constructor(grid: PitchGrid) {
    const { frames, pitches } = grid;
    this.grid = grid;
    const count = (frames >> PAGE_BITS) + 1;
    this.pages = new Array<Float64Array>(count).fill(NO_PAGE);
    this.starts = new Float64Array(count * pitches);
    const sums = new Float64Array(pitches);
    for (let f = 0; f < frames; f++) {
      if (f % PAGE_FRAMES === 0) this.starts.set(sums, (f >> PAGE_BITS) * pitches);
      this.addFrame(f, sums, 0);
    }
    if (frames % PAGE_FRAMES === 0) this.starts.set(sums, (frames >> PAGE_BITS) * pitches);
  }

  /** Bytes of memory held. */
  get bytes(): number {
    return this.starts.byteLength + this.kept.reduce((sum, page) => sum + this.pages[page]!.byteLength, 0);
  }

  /**
   * @param frame 0 to the number of frames
   * @param place semitone of the grid
   * @returns evidence of the frames before this one
   */
  at(frame: number, place: number): number {
    return this.pageOf(frame)[(frame & (PAGE_FRAMES - 1)) * this.grid.pitches + place]!;
  }

  /** The semitone with most evidence between two frames. */
  strongest(from: number, to: number): number {
    const { pitches } = this.grid;
    this.pageOf(from);
    const after = this.pageOf(to);
    // asked for again, because its memory may just have been given to the other
    const before = this.pageOf(from);
    const start = (from & (PAGE_FRAMES - 1)) * pitches;
    const end = (to & (PAGE_FRAMES - 1)) * pitches;
    let best = 0;
    let most = Number.NEGATIVE_INFINITY;
    for (let p = 0; p < pitches; p++) {
      const sum = after[end + p]! - before[start + p]!;
      if (sum > most) {
        most = sum;
        best = p;
      }
    }
    return best;
  }

  private pageOf(frame: number): Float64Array {
    const page = this.pages[frame >> PAGE_BITS]!;
    return page.length > 0 ? page : this.makePage(frame >> PAGE_BITS);
  }

  private makePage(page: number): Float64Array {
    const { frames, pitches } = this.grid;
    const sums = this.memoryFor(page);
    sums.set(this.starts.subarray(page * pitches, (page + 1) * pitches));
    const first = page * PAGE_FRAMES;
    for (let f = first, end = Math.min(frames, first + PAGE_FRAMES - 1); f < end; f++) {
      const row = (f - first) * pitches;
      sums.copyWithin(row + pitches, row, row + pitches);
      this.addFrame(f, sums, row + pitches);
    }
    this.pages[page] = sums;
    return sums;
  }

  /** New memory for a page, or that of the oldest one. */
  private memoryFor(page: number): Float64Array {
    if (this.kept.length < MOST_PAGES) {
      this.kept.push(page);
      return new Float64Array(PAGE_FRAMES * this.grid.pitches);
    }
    const given = this.kept[this.oldest]!;
    const memory = this.pages[given]!;
    this.pages[given] = NO_PAGE;
    this.kept[this.oldest] = page;
    this.oldest = (this.oldest + 1) % MOST_PAGES;
    return memory;
  }

  private addFrame(frame: number, sums: Float64Array, row: number): void {
    const { rowStart, place, salience, voicing } = this.grid;
    const weight = voicing[frame]!;
    const end = rowStart[frame + 1]!;
    for (let k = rowStart[frame]!; k < end; k++) {
      const at = row + place[k]!;
      sums[at] = sums[at]! + weight * salience[k]!;
    }
  }
}

const NO_PAGE = new Float64Array(0);

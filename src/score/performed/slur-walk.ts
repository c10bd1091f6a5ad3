import type { SlurEnds } from '../printed/match-slurs.js';

/** Follows slurs through the performed order and remembers which boundaries between notes they cover. */
export class SlurWalk {
  private readonly open = new Set<number>();
  private readonly covered = new Set<number>();
  /** the performed order has just jumped: an end without a beginning belongs to the slur that was open before */
  private jumpedFrom: boolean | null = null;
  private lastIndex = -1;

  /** The performed order leaves the printed one: slurs do not go on, unless one ends at the very next note. */
  jump(): void {
    this.jumpedFrom = this.open.size > 0;
    this.open.clear();
  }

  /**
   * @param ends slurs that begin and end at a printed note or rest
   * @param index sounding note it belongs to, -1 before the first
   */
  pass(ends: SlurEnds, index: number): void {
    if (index > this.lastIndex) {
      if (this.open.size > 0 || (this.jumpedFrom === true && ends.strayStop)) this.covered.add(index);
      this.lastIndex = index;
      this.jumpedFrom = null;
    }
    for (const slur of ends.stops) this.open.delete(slur);
    for (const slur of ends.starts) this.open.add(slur);
  }

  /**
   * @param index sounding note
   * @returns true when a slur goes on from the note before it to this note
   */
  coversBoundaryBefore(index: number): boolean {
    return this.covered.has(index);
  }
}

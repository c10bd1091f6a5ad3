/** Room at first, in entries. */
const LEAST_ROOM = 2 ** 14;

/**
 * How each state came to be entered, kept only as far as a state or the best end can still be traced back to it. Ways
 * that compete soon share their past, so what is kept grows with the length of one way and not with steps × states.
 *
 * Source: token passing (Young, Russell & Thornton 1989); entries nothing leads to are given up, as in a collector that
 * marks and compacts.
 */
export class WayBack {
  /** entries there are; those before it are never changed, and each leads to one before it or to none (-1) */
  length = 0;
  private step: Int32Array;
  private way: Uint8Array;
  private parent: Int32Array;
  /** where an entry goes when room is made, -1 where nothing leads to it */
  private place: Int32Array;

  constructor(room: number) {
    const size = Math.max(LEAST_ROOM, 4 * room);
    this.step = new Int32Array(size);
    this.way = new Uint8Array(size);
    this.parent = new Int32Array(size);
    this.place = new Int32Array(size);
  }

  /** Bytes of memory held. */
  get bytes(): number {
    return this.step.byteLength + this.way.byteLength + this.parent.byteLength + this.place.byteLength;
  }

  /**
   * @param step at which a state was entered
   * @param way how
   * @param parent entry of the state it came from, -1 for none
   * @returns the new entry; room for it must have been made
   */
  add(step: number, way: number, parent: number): number {
    const entry = this.length++;
    this.step[entry] = step;
    this.way[entry] = way;
    this.parent[entry] = parent;
    return entry;
  }

  /**
   * Makes sure that so many more entries fit. What the roots do not lead to may be given up, and the rest moved.
   *
   * @param room entries to come
   * @param roots entries that must stay, -1 for none; they are told where their entries have gone
   */
  makeRoom(room: number, roots: readonly Int32Array[]): void {
    if (this.length + room <= this.step.length) return;
    this.mark(roots);
    this.compact();
    for (const root of roots) {
      for (let i = 0; i < root.length; i++) if (root[i]! >= 0) root[i] = this.place[root[i]!]!;
    }
    // at least half of the memory is free after this, so that marking costs no more than adding does
    const wanted = 2 * (this.length + room);
    if (wanted > this.step.length) this.grow(Math.max(wanted, 2 * this.step.length));
  }

  /**
   * @param entry the last one
   * @returns step and way of it and of all that led to it, the last first
   */
  trace(entry: number): { readonly step: number; readonly way: number }[] {
    const entries = [];
    for (let at = entry; at >= 0; at = this.parent[at]!) entries.push({ step: this.step[at]!, way: this.way[at]! });
    return entries;
  }

  private mark(roots: readonly Int32Array[]): void {
    const { parent, place } = this;
    place.fill(-1, 0, this.length);
    for (const root of roots) {
      for (let i = 0; i < root.length; i++) if (root[i]! >= 0) place[root[i]!] = 0;
    }
    // an entry comes after the one it leads to
    for (let at = this.length - 1; at >= 0; at--) if (place[at] === 0 && parent[at]! >= 0) place[parent[at]!] = 0;
  }

  private compact(): void {
    const { step, way, parent, place, length } = this;
    let kept = 0;
    for (let at = 0; at < length; at++) {
      if (place[at] !== 0) continue;
      step[kept] = step[at]!;
      way[kept] = way[at]!;
      parent[kept] = parent[at]! < 0 ? -1 : place[parent[at]!]!;
      place[at] = kept++;
    }
    this.length = kept;
  }

  private grow(size: number): void {
    const larger = (old: Int32Array): Int32Array => {
      const grown = new Int32Array(size);
      grown.set(old);
      return grown;
    };
    const way = new Uint8Array(size);
    way.set(this.way);
    this.way = way;
    this.step = larger(this.step);
    this.parent = larger(this.parent);
    this.place = new Int32Array(size);
  }
}

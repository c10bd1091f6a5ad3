const PAGE_BYTES = 2 ** 16;

/**
 * Bounds the memory that programs in WebAssembly may use in this thread: the engine bounds its own heap, not theirs. What
 * asks for more is refused, as where there is none left.
 *
 * @param megabytes the bound on each program
 *
 * Source: WebAssembly JavaScript Interface, Memory.grow.
 */
export function boundMemory(megabytes: number): void {
  const grow = WebAssembly.Memory.prototype.grow;
  WebAssembly.Memory.prototype.grow = function growWithin(this: WebAssembly.Memory, pages: number): number {
    if (this.buffer.byteLength + pages * PAGE_BYTES > megabytes * 2 ** 20) throw new RangeError('memory is bounded');
    return grow.call(this, pages);
  };
}

/**
 * Memory used again and again for stretches of samples, so that a take of any length needs no more than its longest stretch.
 *
 * @returns gives an array of a length; what was given before is overwritten by whoever fills it
 */
export function createScratch(): (length: number) => Float32Array {
  let memory = new Float32Array(0);
  return (length) => {
    if (memory.length < length) memory = new Float32Array(length);
    return memory.subarray(0, length);
  };
}

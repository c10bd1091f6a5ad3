declare module 'fft.js' {
  /** Radix-4 complex FFT of a power-of-two size; arrays hold interleaved real and imaginary parts. */
  export default class FFT {
    constructor(size: number);
    createComplexArray(): number[];
    transform(out: ArrayLike<number>, data: ArrayLike<number>): void;
    inverseTransform(out: ArrayLike<number>, data: ArrayLike<number>): void;
  }
}

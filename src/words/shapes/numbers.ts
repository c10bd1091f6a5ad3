/** How numbers are written in one language; all round half up. */
export interface Numbers {
  /** at most so many decimals, trailing zeros dropped, with a true minus sign: `−12.3` */
  readonly number: (value: number, decimals: number) => string;
  readonly whole: (value: number) => string;
  readonly tenth: (value: number) => string;
  /** with all of its decimals */
  readonly exact: (value: number) => string;
  /** with exactly so many decimals */
  readonly fixed: (value: number, decimals: number) => string;
  /** seconds to a hundredth, never none */
  readonly hundredths: (milliseconds: number) => string;
  /** a size in dB, rounded down, so that what falls short of something does not read as if it reached it */
  readonly down: (db: number) => string;
}

/** Linear values of the 256 A-law and µ-law codes, full scale = ±1 (the 16 bit value divided by 32768). */

const SIGN_BIT = 0x80;
const MU_LAW_BIAS = 0x84;

function muLawToLinear(code: number): number {
  const inverted = ~code & 0xff;
  const magnitude = ((((inverted & 0x0f) << 3) + MU_LAW_BIAS) << ((inverted & 0x70) >> 4)) - MU_LAW_BIAS;
  return (inverted & SIGN_BIT ? -magnitude : magnitude) / 32768;
}

function aLawToLinear(code: number): number {
  const toggled = code ^ 0x55;
  const segment = (toggled & 0x70) >> 4;
  const mantissa = ((toggled & 0x0f) << 4) + 8;
  const magnitude = segment === 0 ? mantissa : (mantissa + 0x100) << (segment - 1);
  return (toggled & SIGN_BIT ? magnitude : -magnitude) / 32768;
}

/** Source: ITU-T G.711, table 2 (µ-law); 14 bit values times 4. */
export const MU_LAW = Float32Array.from({ length: 256 }, (_, code) => muLawToLinear(code));

/** Source: ITU-T G.711, table 1 (A-law); 13 bit values times 8. */
export const A_LAW = Float32Array.from({ length: 256 }, (_, code) => aLawToLinear(code));

const HEADER_BYTES = 44;

function writeTag(view: DataView, at: number, tag: string): void {
  for (let i = 0; i < tag.length; i++) view.setUint8(at + i, tag.charCodeAt(i));
}

/**
 * @param samples mono, full scale = ±1; what lies beyond is clipped
 * @param sampleRateHz whole number of samples a second
 * @returns a WAV file, 16 bit PCM, one channel
 *
 * Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), WAVE.
 */
export function encodeWav(samples: Float32Array, sampleRateHz: number): Uint8Array {
  const dataBytes = samples.length * 2;
  const bytes = new Uint8Array(HEADER_BYTES + dataBytes);
  const view = new DataView(bytes.buffer);
  writeTag(view, 0, 'RIFF');
  view.setUint32(4, HEADER_BYTES - 8 + dataBytes, true);
  writeTag(view, 8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  writeTag(view, 36, 'data');
  view.setUint32(40, dataBytes, true);
  for (let i = 0; i < samples.length; i++) {
    const value = Math.round((samples[i] as number) * 0x8000);
    view.setInt16(HEADER_BYTES + i * 2, Math.max(-0x8000, Math.min(0x7fff, value)), true);
  }
  return bytes;
}

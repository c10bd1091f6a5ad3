import OpusScript from 'opusscript';

/** How the encoder is asked. Source: opus_defines.h of libopus 1.4. */
const SET_BITRATE = 4002;
const SET_VBR = 4006;
const SET_COMPLEXITY = 4010;
/** Bits a second: well beyond what one instrument needs at this rate to sound as it did. */
const BITRATE = 64_000;
/** The quickest. Up to 3 the sound before attacks is as clean; from 5 on the error is 3 dB less, for twice the time. */
const COMPLEXITY = 0;
/** The longest packet there is. */
const PACKET_SECONDS = 0.06;
/** By how much the sound is late in the packets of this kind of encoder: 2.5 ms. Source: opus_encoder.c of libopus 1.4. */
const DELAY_SECONDS = 0.0025;
const FULL_SCALE = 32_767;

/** A sound as Opus packets, each as long as the others. */
export interface OpusSound {
  readonly packets: readonly Uint8Array[];
  readonly packetSeconds: number;
  /** the packets begin so much earlier than the sound */
  readonly delaySeconds: number;
  /** of the sound, without delay and without what fills the last packet */
  readonly durationSeconds: number;
  /** of the samples that went in */
  readonly sampleRateHz: number;
}

/**
 * Encodes a mono sound as it comes. Attacks are kept sharp: only the coding for music is used, never that for speech.
 *
 * Source: RFC 6716 (Opus).
 */
export class OpusPackets {
  readonly #encoder: OpusScript;
  readonly #sampleRateHz: number;
  readonly #packet: Int16Array;
  readonly #packets: Uint8Array[] = [];
  readonly #bytes: Buffer;
  #filled = 0;
  #length = 0;

  /** @param sampleRateHz of the sound, one of those that Opus knows */
  constructor(sampleRateHz: 8000 | 12000 | 16000 | 24000 | 48000) {
    this.#sampleRateHz = sampleRateHz;
    this.#packet = new Int16Array(sampleRateHz * PACKET_SECONDS);
    this.#bytes = Buffer.from(this.#packet.buffer);
    this.#encoder = new OpusScript(sampleRateHz, 1, OpusScript.Application.RESTRICTED_LOWDELAY);
    this.#encoder.encoderCTL(SET_BITRATE, BITRATE);
    this.#encoder.encoderCTL(SET_VBR, 1);
    this.#encoder.encoderCTL(SET_COMPLEXITY, COMPLEXITY);
  }

  /** @param samples what comes next, full scale = ±1; beyond it is cut off */
  add(samples: Float32Array): void {
    this.#length += samples.length;
    this.#put(samples);
  }

  /** @returns the whole sound; nothing can be added any more */
  end(): OpusSound {
    const durationSeconds = this.#length / this.#sampleRateHz;
    this.#put(new Float32Array(Math.ceil(DELAY_SECONDS * this.#sampleRateHz)));
    if (this.#filled > 0) this.#put(new Float32Array(this.#packet.length - this.#filled));
    return {
      packets: this.#packets,
      packetSeconds: PACKET_SECONDS,
      delaySeconds: DELAY_SECONDS,
      durationSeconds,
      sampleRateHz: this.#sampleRateHz,
    };
  }

  /** Gives the encoder's memory back. */
  free(): void {
    this.#encoder.delete();
  }

  #put(samples: Float32Array): void {
    const packet = this.#packet;
    for (let from = 0; from < samples.length; ) {
      const count = Math.min(samples.length - from, packet.length - this.#filled);
      const at = this.#filled;
      for (let i = 0; i < count; i++) {
        packet[at + i] = Math.round(Math.max(-1, Math.min(1, samples[from + i] as number)) * FULL_SCALE);
      }
      from += count;
      this.#filled += count;
      if (this.#filled === packet.length) this.#close();
    }
  }

  #close(): void {
    this.#packets.push(this.#encoder.encode(this.#bytes, this.#packet.length));
    this.#filled = 0;
  }
}

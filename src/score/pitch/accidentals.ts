import type { MisreadingKind } from '../misreadings.js';
import type { NoteLetter, WrittenPitch } from '../types.js';
import type { KeySignature } from './key.js';

/**
 * The accidental rule: a sign holds to the barline, on that line or space, in that octave only; then the key signature is
 * back; a tie carries the sign over the barline for that note.
 */

/** Why a note is altered as it is. */
export type AlterReason = 'printed-here' | 'earlier-in-bar' | 'tied-over' | 'key-signature';

/** What the page says about one note, read by the rule. */
export interface SignReading {
  /** alteration the page asks for without a sign at the note itself, in semitones */
  readonly alterInForce: number;
  readonly reason: AlterReason;
  /** MusicXML name of the sign at this note, null when none is needed and none is printed */
  readonly sign: string | null;
  /** the pitch meant needs a sign that the file does not print */
  readonly signMissing: boolean;
  /** alterations that the five misreadings give, only where they differ from the pitch meant, likelier first */
  readonly misreadings: readonly { readonly kind: MisreadingKind; readonly alter: number }[];
}

/** One note as the page shows it. */
export interface SignedNote {
  readonly pitch: WrittenPitch;
  /** MusicXML name of the printed sign, null when none */
  readonly printedSign: string | null;
  /** the note goes on from a note tied to it */
  readonly tiedOver: boolean;
}

interface SignInBar {
  readonly step: NoteLetter;
  readonly octave: number;
  readonly alter: number;
}

const SIGN_OF_ALTER: ReadonlyMap<number, string> = new Map([
  [-3, 'triple-flat'],
  [-2, 'flat-flat'],
  [-1.5, 'three-quarters-flat'],
  [-1, 'flat'],
  [-0.5, 'quarter-flat'],
  [0, 'natural'],
  [0.5, 'quarter-sharp'],
  [1, 'sharp'],
  [1.5, 'three-quarters-sharp'],
  [2, 'double-sharp'],
  [3, 'triple-sharp'],
]);

const ALTER_OF_SIGN: ReadonlyMap<string, number> = new Map([
  ...[...SIGN_OF_ALTER].map(([alter, sign]) => [sign, alter] as const),
  ['sharp-sharp', 2],
  ['natural-sharp', 1],
  ['natural-flat', -1],
]);

/**
 * @param sign MusicXML name of an accidental
 * @returns the alteration it asks for in semitones, undefined for rarer signs
 *
 * Source: MusicXML 4.0, `accidental-value`.
 */
export function alterOfSign(sign: string): number | undefined {
  return ALTER_OF_SIGN.get(sign);
}

/** Reads the notes of one staff in printed order and remembers the signs that hold. */
export class AccidentalReader {
  private key: KeySignature = {};
  /** signs of this bar by line, the latest sign last */
  private bar = new Map<string, SignInBar>();
  /** signs of the bar before, and notes tied into it */
  private barBefore = new Map<string, SignInBar>();
  private tiedIntoBar = new Map<string, SignInBar>();

  /** A barline: signs end, ties aside. */
  barline(): void {
    this.barBefore = new Map([...this.tiedIntoBar, ...this.bar]);
    this.bar = new Map();
    this.tiedIntoBar = new Map();
  }

  /** @param key signature in force from here on; in the middle of a bar it also ends the signs before it */
  changeKey(key: KeySignature): void {
    this.key = key;
    this.bar = new Map();
  }

  /**
   * @param note next note of the staff
   * @returns what the page says about it
   *
   * Source: common practice (the rule above); MusicXML 4.0: `alter` is the pitch meant, `accidental` only what is printed.
   */
  read(note: SignedNote): SignReading {
    const { step, octave, alter } = note.pitch;
    const line = `${step}${octave}`;
    const earlier = this.bar.get(line);
    const alterInForce = earlier?.alter ?? this.key[step] ?? 0;
    const signMissing = note.printedSign === null && !note.tiedOver && alter !== alterInForce;
    const sign = note.printedSign ?? (signMissing ? (SIGN_OF_ALTER.get(alter) ?? 'other') : null);
    const misreadings = this.misreadings(note.pitch, sign !== null, alterInForce, earlier);
    if (sign !== null) {
      this.bar.delete(line);
      this.bar.set(line, { step, octave, alter });
    } else if (note.tiedOver && earlier === undefined && alter !== alterInForce) {
      this.tiedIntoBar.set(line, { step, octave, alter });
    }
    return { alterInForce, reason: reasonOf(sign, note.tiedOver, earlier), sign, signMissing, misreadings };
  }

  private misreadings(
    pitch: WrittenPitch,
    signed: boolean,
    alterInForce: number,
    earlier: SignInBar | undefined,
  ): { kind: MisreadingKind; alter: number }[] {
    const byKey = this.key[pitch.step] ?? 0;
    const found: { kind: MisreadingKind; alter: number | undefined }[] = [];
    const signMatters = signed && alterInForce !== pitch.alter;
    if (signed) found.push({ kind: 'accidental-forgotten', alter: alterInForce });
    if (!signed && earlier !== undefined) found.push({ kind: 'dropped-within-bar', alter: byKey });
    if (!signMatters) {
      found.push({ kind: 'wrong-octave-applied', alter: this.latestOnLetter(pitch)?.alter });
      if (earlier === undefined) {
        found.push({ kind: 'carried-past-barline', alter: this.carriedInto(pitch)?.alter });
        if (!signed && byKey !== 0) found.push({ kind: 'key-signature-forgotten', alter: 0 });
      }
    }
    return found.filter(
      (m): m is { kind: MisreadingKind; alter: number } => m.alter !== undefined && m.alter !== pitch.alter,
    );
  }

  private carriedInto(pitch: WrittenPitch): SignInBar | undefined {
    const line = `${pitch.step}${pitch.octave}`;
    return this.tiedIntoBar.get(line) ?? this.barBefore.get(line);
  }

  /** The latest sign of this bar on the same letter, in whatever octave; one on the note's own line predicts no other pitch. */
  private latestOnLetter(pitch: WrittenPitch): SignInBar | undefined {
    let latest: SignInBar | undefined;
    for (const sign of this.bar.values()) if (sign.step === pitch.step) latest = sign;
    return latest;
  }
}

function reasonOf(sign: string | null, tiedOver: boolean, earlier: SignInBar | undefined): AlterReason {
  if (sign !== null) return 'printed-here';
  if (tiedOver) return 'tied-over';
  return earlier === undefined ? 'key-signature' : 'earlier-in-bar';
}

import type { FindingKind } from '../../judge/index.js';

/** What a place is made of. */
export interface Place {
  readonly kind: FindingKind;
  readonly bar: string;
  readonly toBar?: string | undefined;
  readonly pass: number;
  readonly beat?: number | undefined;
}

/** The pieces of a place in words. */
export interface PlaceWords {
  readonly wholeTake: string;
  readonly bar: (bar: string) => string;
  readonly bars: (bar: string, toBar: string) => string;
  /** goes on after a bar; `after`: somewhere after that beat */
  readonly beat: (beat: { readonly text: string; readonly after: boolean }) => string;
  /** goes on after a bar that is reached again through a repeat; 2 is the second time */
  readonly again: (pass: number) => string;
}

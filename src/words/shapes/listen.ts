/** Everything a listening page says that the printed pages do not. Places come as "Bar 7, beat 2" or "Bars 5–8". */
export interface ListenWords {
  readonly documentTitle: (title: string, who: string) => string;
  readonly intro: string;
  readonly withoutScripts: string;
  readonly hear: (place: string) => string;
  readonly speeds: readonly {
    readonly rate: number;
    readonly label: string;
  }[];
  /** follows the label of a speed for those who cannot see which finding it belongs to */
  readonly ofPlace: (place: string) => string;
  readonly audioName: (place: string) => string;
  readonly keys: string;
  readonly also: string;
  readonly enough: string;
  readonly curves: string;
  readonly loudnessAlone: string;
  readonly wholeTake: string;
  readonly caution: string;
}

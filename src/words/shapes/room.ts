/** What the listening room says. */
export interface RoomWords {
  readonly documentTitle: (title: string) => string;
  readonly takes: (count: number) => string;
  readonly intro: string;
  readonly withoutScripts: string;
  /** names of regions and groups of controls */
  readonly names: {
    readonly player: string;
    readonly part: string;
    readonly takes: string;
    readonly ways: string;
    readonly speed: string;
  };
  readonly hear: string;
  /** of a place as the findings name it */
  readonly hearPlace: (place: string) => string;
  /** follows the heading of a finding for those who cannot see where it stands */
  readonly ofPlace: (place: string) => string;
  readonly stop: string;
  readonly loop: string;
  readonly moreBars: string;
  readonly fewerBars: string;
  readonly onward: string;
  readonly wholeTake: string;
  readonly speeds: readonly { readonly rate: number; readonly label: string }[];
  readonly previous: string;
  readonly next: string;
  readonly take: string;
  readonly part: string;
  readonly pages: string;
  readonly ways: { readonly take: string; readonly round: string; readonly days: string };
  readonly marksShown: string;
  /** below the part */
  readonly curves: string;
  readonly practise: {
    readonly heading: string;
    readonly about: string;
    readonly written: string;
    readonly played: string;
    readonly inTurn: string;
    readonly click: string;
    readonly model: string;
  };
  readonly round: {
    readonly heading: string;
    readonly about: string;
    readonly order: string;
    readonly byList: string;
    readonly byCriterion: (criterion: string) => string;
    readonly byLot: string;
    readonly reveal: string;
    readonly loudness: string;
    readonly matched: string;
    readonly asRecorded: string;
    readonly judge: string;
    readonly criterion: string;
    readonly mark: string;
    readonly word: string;
    readonly save: string;
    readonly forget: string;
    readonly kept: string;
  };
  readonly days: {
    readonly heading: string;
    readonly about: string;
    readonly player: string;
    readonly earlier: string;
    readonly later: string;
    readonly oneAfterOther: string;
    readonly alternate: string;
    readonly change: string;
    readonly gone: string;
    readonly fresh: string;
    readonly still: string;
    readonly notComparable: string;
  };
  readonly findings: string;
  readonly nothingFound: string;
  readonly keysHeading: string;
  /** a key or keys, and what they do */
  readonly keys: readonly (readonly [keys: string, does: string])[];
  readonly audioName: (take: string) => string;
  readonly silent: string;
  readonly lineName: (from: string, to: string) => string;
  readonly caution: string;
  readonly script: RoomScriptWords;
}

/** What the room's script says; `{…}` is filled in by it. */
interface RoomScriptWords {
  readonly bar: string;
  readonly bars: string;
  readonly pass: string;
  readonly passNumber: string;
  readonly hear: string;
  readonly stop: string;
  readonly barName: string;
  readonly severalPasses: string;
  readonly marksInBar: string;
  readonly oneMarkInBar: string;
  readonly notPlayed: string;
  readonly notPlayedIn: string;
  readonly noSound: string;
  readonly cannotPlay: string;
  readonly hearing: string;
  readonly written: string;
  readonly yourTurn: string;
  readonly hidden: string;
  readonly quieter: string;
  readonly asRecorded: string;
  readonly notKept: string;
  readonly badMark: string;
  readonly noJudge: string;
  readonly leftOut: string;
  readonly forgetAgain: string;
  readonly file: string;
}

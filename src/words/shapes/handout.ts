/** Everything that is said over what is handed out. */
export interface HandoutWords {
  readonly title: string;
  /** title of the document to print */
  readonly printTitle: string;
  readonly facts: (players: number, takes: number) => string;
  readonly forAll: string;
  readonly print: string;
  /** what stands beside the document to print */
  readonly sheets: (sheets: number) => string;
  readonly section: string;
  readonly mail: string;
  readonly mailNote: string;
  readonly players: string;
  readonly player: string;
  readonly piece: string;
  readonly day: string;
  readonly found: string;
  readonly files: string;
  readonly pages: string;
  readonly listen: string;
  /** what a link leads to, for those who hear it without its row */
  readonly pagesOf: (player: string) => string;
  readonly listenOf: (player: string) => string;
  readonly findings: (fix: number, watch: number) => string;
  readonly notReviewed: string;
  readonly caution: string;
  /** subject of a mail to a player; the day is null when nobody knows it */
  readonly subject: (piece: string, day: string | null) => string;
}

/** What a page says that could not review its take. */
interface Words {
  readonly heading: string;
  readonly what: string;
  readonly tries: readonly string[];
}

/** The page for a take that was not reviewed, by the reason. */
export const NOT_REVIEWED_WORDS: Record<'not-this-score' | 'too-poor', Words> = {
  'not-this-score': {
    heading: 'This take does not fit the part',
    what: 'There is playing on this recording, but it could not be matched to the part. So nothing is said about the playing.',
    tries: [
      'Check that the right file was sent in: another étude, a scale or a warm-up may have its name.',
      'Check that the part is the one for your instrument. A part in another key or clef does not fit.',
      'If the take stops and starts many times, record it once more from the beginning to the end.',
      'Play a little slower if that helps. A slow take from beginning to end can be reviewed well.',
    ],
  },
  'too-poor': {
    heading: 'The playing could not be heard',
    what: 'The recording does not let the playing be heard clearly enough. So nothing is said about the playing.',
    tries: [
      'Listen to the file first. If you cannot follow the melody yourself, record it once more.',
      'Put the recorder about two metres away, in front of you and a little to the side, in a quiet room.',
      'Switch off noise suppression and automatic level where the recorder has them.',
      'Make a short test with your loudest bar. It should not distort, and your softest bar should stand clear of the room.',
    ],
  },
};

/** Headings of that page. */
export const NOT_REVIEWED_HEADINGS = { tries: 'What to try', recording: 'About the recording' } as const;

/** Endings of recordings, whether or not they can be read: what a take holds is found out when it is read. */
export const RECORDING_ENDINGS: ReadonlySet<string> = new Set(
  (
    '.wav .wave .mp3 .m4a .m4b .mp4 .m4v .mov .aac .flac .aif .aiff .aifc .ogg .oga .opus .caf .amr .awb .3gp .3gpp ' +
    '.3g2 .webm .weba .mka .mkv .wma .w64 .au .ts'
  ).split(' '),
);

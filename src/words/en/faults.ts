import { FAILURES, type FailureTable, isCoded, type LooseCode, type Sayings } from '../../base/index.js';
import { say } from '../say.js';
import { BRIEF_FAULTS_IN_WORDS } from './brief-faults.js';
import { DATES } from './dates.js';

const SAVE = 'save the take as WAV (16 or 24 bit PCM)';
const RECORD = 'record or copy the take again';
const SAVE_OR = 'save the take as WAV or M4A';
const COPY = 'copy or record the take again';
const EXPORT = 'export or record the take again';

const headerDamaged = (found: string): string => `the WAV header is damaged: ${found}; ${EXPORT}`;

const FORMATS = {
  wav: 'a WAV file',
  unknown: 'no WAV file',
  'no-known-kind': 'no recording of a known kind',
  riff: 'a RIFF file without audio',
  flac: 'a FLAC file',
  mp3: 'an MP3 file',
  ogg: 'an Ogg file',
  mp4: 'an M4A or MP4 file',
  '3gp': 'a 3GP file',
  mov: 'a QuickTime film',
  'mpeg-ts': 'an MPEG stream',
  aiff: 'an AIFF file',
  wma: 'a WMA file',
  rifx: 'a big-endian WAV file (RIFX)',
  wave64: 'a Wave64 file',
  au: 'an AU file',
  caf: 'a CAF file',
  wavpack: 'a WavPack file',
  amr: 'an AMR file',
  'amr-of-many': 'an AMR file of several channels',
  aac: 'an AAC file',
  midi: 'a MIDI file',
  matroska: 'a WebM or Matroska file',
  zip: 'a ZIP archive',
  pdf: 'a PDF file',
  text: 'a text file',
} as const;

const CODINGS = { pcm: 'PCM', float: 'floating point', 'a-law': 'A-law', 'mu-law': 'µ-law' } as const;

const WRITING_FAULTS = {
  'not-allowed': 'not allowed',
  'read-only': 'the disk is read-only',
  full: 'the disk is full',
  'full-for-you': 'the disk is full for you',
  'too-large': 'files may not become this large here',
  'file-in-the-way': 'a file is in the way of the folder',
  'folder-in-the-way': 'a folder is in the way of the file',
  'no-folder': 'the folder cannot be made',
  'long-name': 'the name is too long',
  'link-in-circle': 'a link here leads back to itself',
  'files-open': 'too many files are open already',
} as const;

const given = (inputs: readonly string[]): string =>
  inputs.length === 0 ? 'the takes that were named' : inputs.join(', ');
const braced = (fields: readonly string[]): string => fields.map((field) => `{${field}}`).join(', ');
const hexadecimal = (tag: number): string => `0x${tag.toString(16).padStart(4, '0')}`;
const failureSaid = (failure: LooseCode): string =>
  isCoded(FAILURES, failure) ? say(FAULTS_IN_WORDS, failure) : failure.code;

/** Why something could not be done, in English: what was found, and what is needed. */
export const FAULTS_IN_WORDS: Sayings<FailureTable> = {
  ...BRIEF_FAULTS_IN_WORDS,

  'recording-empty': () => `the file is empty; ${SAVE}`,
  'wav-ends-at-once': ({ bytes }) => `the WAV file ends after ${bytes} bytes; ${RECORD}`,
  'other-format': ({ format }) => `this is ${FORMATS[format]}; ${SAVE}`,
  'other-audio': ({ ending }) => `this is ${ending} audio, and only WAV is read; save it as WAV`,
  'wav-without-audio': () => `the WAV file holds no audio; ${RECORD}`,
  'wav-too-short': ({ milliseconds }) => `the WAV file holds only ${milliseconds} ms of audio; ${RECORD}`,
  'recording-too-long': ({ minutes }) =>
    `the recording is ${minutes} minutes long; cut it to the take, 60 minutes at most`,
  'no-recording': ({ format }) => `this is ${FORMATS[format]}; a recording is needed, as it was made or saved as WAV`,
  'format-not-read': ({ format }) => `this is ${FORMATS[format]}, which is not read; ${SAVE_OR}`,
  'no-sound-in-it': ({ format }) => `this is ${FORMATS[format]} in which no sound is found; ${SAVE_OR}`,
  'coding-not-read': ({ format, coding }) => {
    const name = coding === '' ? 'a kind of AAC that is not common' : coding;
    return `this is ${FORMATS[format]} whose sound is coded as ${name}, which is not read; ${SAVE_OR}`;
  },
  'sound-not-usual': ({ channels, most, hertz, lowestHertz, highestHertz }) =>
    `this file says ${channels} channels at ${hertz} Hz; 1 to ${most} channels at ${lowestHertz} to ${highestHertz} Hz can be read`,
  'recording-damaged': ({ format }) => `this is ${FORMATS[format]} that is damaged; ${COPY}`,
  'recording-too-short': ({ milliseconds }) => `the recording holds only ${milliseconds} ms of sound; ${RECORD}`,
  'recording-over-an-hour': () => 'the recording is more than an hour long; cut it to the take',
  'sound-library-missing': () =>
    'to read this the sound library libasound2 is needed; install it (apt install libasound2), or save the take as WAV',
  'sound-engine-missing': () => 'this kind of file cannot be read on this machine; save the take as WAV',
  'decoder-died': ({ format }) =>
    `this is ${FORMATS[format]} at which the decoder broke down, so it is damaged; ${COPY}`,
  'decoder-too-slow': ({ format }) =>
    `this is ${FORMATS[format]} whose decoding does not end, so it is damaged; ${COPY}`,
  'decoder-too-large': ({ format }) =>
    `this is ${FORMATS[format]} that needs more memory than a take should; cut it to the take, or record it again`,
  'wav-without-data-chunk': () =>
    `the WAV file has no audio in it (no data chunk); ${EXPORT} as WAV (16 or 24 bit PCM)`,
  'wav-without-format-chunk': () =>
    `the WAV file does not say how its audio is stored (no fmt chunk); ${EXPORT} as WAV (16 or 24 bit PCM)`,
  'wav-extension-cut': () => headerDamaged('its extensible format is cut short'),
  'wav-format-cut': () => headerDamaged('its format description is cut short'),
  'wav-rate-zero': () => headerDamaged('it says a sample rate of 0 Hz'),
  'wav-no-channels': () => headerDamaged('it says 0 channels'),
  'wav-no-bits': () => headerDamaged('it says 0 bits a sample'),
  'wav-frames-differ': ({ channels, bits, frameBytes, neededBytes }) =>
    headerDamaged(`it says ${channels} × ${bits} bit and yet ${frameBytes} bytes a frame instead of ${neededBytes}`),
  'wav-unknown-kind': () => `this WAV file holds audio of an unknown kind (not PCM); ${SAVE}`,
  'wav-rate-unread': ({ hertz, lowestHertz, highestHertz }) =>
    `this WAV file says a sample rate of ${hertz} Hz, ${lowestHertz} to ${highestHertz} Hz can be read; ${SAVE}`,
  'wav-many-channels': ({ channels, most }) =>
    `this WAV file says ${channels} channels, 1 to ${most} can be read; ${SAVE}`,
  'wav-odd-depth': ({ bits, coding }) =>
    `this WAV file says ${bits} bit ${CODINGS[coding]}, which is not a usual WAV format; ${SAVE}`,
  'wav-compressed': ({ coding, formatTag }) => {
    const name = coding === '' ? `an unknown coding (format tag ${hexadecimal(formatTag)})` : coding;
    return `this WAV file is compressed as ${name}, which cannot be measured; ${SAVE}`;
  },

  'score-empty': () => 'the score is empty (0 bytes); a MusicXML file is needed',
  'score-no-xml': () => 'the file is neither XML nor a compressed score; a MusicXML file is needed',
  'score-too-large': ({ megabytes }) =>
    `the score is ${megabytes} MB large; at most 16 MB are read, 8 MB when compressed`,
  'score-grows': ({ ratio }) => `the compressed score grows more than ${ratio}-fold; no music does`,
  'score-zip-without-score': () => 'the compressed score holds no MusicXML file; export it again as MusicXML',
  'score-zip-names-nothing': () =>
    'the compressed score holds not the file its container names; export it again as MusicXML',
  'score-zip-damaged': () => 'the compressed score is damaged; export it again as MusicXML',
  'score-other-document': ({ root }) => `the document is <${root}>; <score-partwise> or <score-timewise> is needed`,
  'score-not-well-formed': ({ line, said }) => `the score is not well-formed XML: line ${line}: ${said}`,
  'score-without-element': () => 'the score holds no XML element; a MusicXML file is needed',
  'score-unsafe-name': () => 'the score uses a name that MusicXML does not have and that is not safe to read',
  'score-nests-deep': ({ deepest }) => `the score nests its elements deeper than ${deepest}; MusicXML does not`,
  'score-xml-unread': ({ said }) => `the score cannot be read as XML: ${said}`,
  'score-defines-types': () => 'the score brings its own document type definitions; MusicXML needs none',
  'score-without-part': () => 'the score has no part with a note to play',
  'part-without-notes': () => 'the part has no note to play',
  'part-not-there': ({ wanted, parts }) => `there is no part "${wanted}"; the score has: ${parts.join(', ')}`,
  'voice-not-there': ({ wanted, voices }) =>
    `the part has no notes in voice "${wanted}"; it has voices: ${voices.join(', ')}`,
  'bar-too-long': ({ bar, quarters, most }) => `bar ${bar} is ${quarters} quarters long; at most ${most} are read`,
  'note-beyond-instruments': ({ bar, where }) =>
    `a note of bar ${bar} sounds ${where} than any instrument plays; check octave and transposition`,
  'too-many-notes': ({ most }) =>
    `the part has more than ${most} notes with its repeats; check the repeats, or give a shorter part`,

  'roster-no-utf8': () => 'this is not UTF-8; save it as “CSV UTF-8”',
  'roster-empty': ({ line, columns }) =>
    `line ${line}: the file is empty; a line of heads is needed: ${columns.join(',')}`,
  'roster-many-cells': ({ line, cells, heads }) =>
    `line ${line}: there are ${cells} cells, and ${heads} heads; put quotes around a cell with a comma in it`,
  'roster-long-cell': ({ line, most }) => `line ${line} has a cell of more than ${most} letters; shorten it`,
  'roster-quotes': ({ line }) =>
    `line ${line}: the quotes of a cell do not match; close them, and double those inside a cell`,
  'roster-head-empty': ({ line, place }) => `line ${line}: head ${place} is empty; give the column a name`,
  'roster-head-missing': ({ line, columns }) =>
    `line ${line}: the head “file” is missing; there are ${columns.join(', ')}`,
  'roster-head-twice': ({ line }) => `line ${line}: a head stands there twice`,
  'roster-no-file': ({ line }) => `line ${line}: the cell under “file” is empty; it names the take`,
  'roster-no-day': ({ line }) =>
    `line ${line}: the cell under “date” is no day; write year-month-day, such as 2026-03-02`,
  'roster-days-unclear': ({ line, days, orders }) =>
    `line ${line}: is this ${days.map((day) => DATES.date(day)).join(' or ')}? Say ${orders.map((order) => `--dates ${order}`).join(' or ')}`,
  'roster-several-takes': ({ line, takes }) => `line ${line}: ${takes} takes have this name; write the folder, too`,
  'roster-take-twice': ({ line, earlierLine }) =>
    `line ${line}: line ${earlierLine} names this take already; keep one of them`,
  'roster-no-such-part': ({ line, scores }) =>
    `line ${line}: the cell under “part” names no score; there are ${scores.join(', ')}`,
  'marks-heads': ({ columns }) => `the first line must have the heads ${columns.join(', ')}`,
  'marks-line': ({ line, criteria }) =>
    `line ${line}: needed are a take, a judge, points as a number, and a criterion: ${criteria.join(', ')}`,
  'names-no-such-field': ({ pattern, field, fields }) =>
    `--names ${pattern}: {${field}} is no field; there are ${braced(fields)}`,
  'names-stray-sign': ({ pattern, fields }) => `--names ${pattern}: braces and slashes only enclose ${braced(fields)}`,
  'names-field-twice': ({ pattern }) => `--names ${pattern}: a field may stand there only once`,
  'names-no-field': ({ pattern, fields }) => `--names ${pattern}: it names no field; there are ${braced(fields)}`,
  'names-fields-touch': ({ pattern }) => `--names ${pattern}: something must stand between two fields, such as _`,

  'bad-words': ({ said }) => `${said}; takesheet --help shows what there is`,
  'no-score-given': () => 'give the part with --score, or a folder of parts with --scores',
  'brief-beside-scores': ({ ending }) => `--brief is for one score; beside --scores put ${ending} files in the folder`,
  'scores-no-folder': () => 'this is a file; --scores needs a folder',
  'scores-folder-empty': () => 'no score is in this folder; put .musicxml, .xml or .mxl files there',
  'no-recording-found': ({ inputs }) =>
    `${given(inputs)}: no recording was found; give recordings, or a folder that holds some`,
  'no-such-takes': ({ inputs }) =>
    `${given(inputs)}: there is no such file or folder; give recordings, or a folder that holds some`,
  'take-without-pages': () => 'this take has a result and no pages; run review again without --json-only',
  'nothing-to-hand-out': () => 'no take in this folder has pages; run review again without --json-only',
  'folder-without-results': () => 'no result of a take is in this folder; give the one that review wrote to',
  'results-are-blind': () => 'the results in this folder are blind; add --blind, or choose another folder',
  'results-show-names': () => 'the results in this folder show names; choose another folder for --blind',
  'sheet-over-result': () => 'the sheet would take the place of a result; choose another name',
  'sheet-over-source': () => 'the sheet would take the place of what it is made from; choose another name',

  'file-missing': () => 'there is no such file; check the name',
  'name-not-utf8': () =>
    'the name of this file is not written in UTF-8, so the file cannot be opened by it; give it another name',
  'file-forbidden': () => 'this may not be read; ask its owner for leave to read it',
  'link-in-circle': () => 'this is a link that leads back to itself; give the file it should lead to',
  'files-open': () =>
    'too many files are open already; allow more of them (ulimit -n 256), or give fewer --jobs, and run the same command again',
  'folder-for-file': () => 'this is a folder; a file is needed',
  'no-ordinary-file': () => 'this is not an ordinary file; a file on a disk is needed',
  'file-too-large': ({ megabytes, most }) => `this file has ${megabytes} MB; at most ${most} MB are read`,
  'file-changed': () =>
    'this file changed while it was read; wait until it is recorded or copied, then run the same command again',
  'cannot-write': ({ why, said }) => {
    const reason = why === 'other' ? `the disk says ${said}` : WRITING_FAULTS[why];
    return `cannot write here (${reason}); choose a folder you may write to`;
  },
  'folder-leads-away': ({ folder }) => `${folder} in it is a link that leads elsewhere; put a folder there`,
  'key-changed': ({ file }) => `${file} is not as it was written; put the old one back, or choose another folder`,

  'result-unread': () => 'this is no result of a take; review the take again',
  'result-of-others': () => 'this is no result of a take; give folders or files that review has written',
  'result-cut-off': () => 'this is not whole JSON, it may have been cut off; review the takes again',
  'result-of-other-version': ({ version, tool, readVersion }) => {
    const found = version === '' ? 'a result that names no version' : `a result of version ${version}`;
    const writer = tool === '' ? '' : `, written by ${tool}`;
    return `this is ${found}${writer}, and version ${readVersion} is read; use the program that wrote it, or review the take again with this one`;
  },
  'result-against-schema': ({ place }) =>
    `this result is not as its schema says, at ${place === '' ? 'the top' : place}; review the take again`,
  'no-result-found': ({ inputs }) =>
    `${inputs.join(', ')}: no result of a take was found; give folders that review has written`,
  'no-result-readable': ({ file, failure, more }) =>
    `${file}: ${failureSaid(failure)}${more === 0 ? '' : ` (and ${more} more files that cannot be read)`}`,
  'results-without-points': () =>
    'no result here has points; review the takes with --brief, which says what each criterion is worth',
  'nobody-to-follow': ({ folders }) =>
    `${folders.join(', ')}: numbers stand here instead of names, and no number comes on two days, so nobody can be followed; give results with names, or review the takes of all weeks into one folder, which keeps the numbers by its blind-key.csv`,

  'took-too-long': () =>
    'listening to this took longer than a take of its length should; review it by itself with a larger --time-limit, or cut it to the étude',
  'too-much-memory': () =>
    'listening to this needed more memory than a take of its length should; cut it to the étude, or review it by itself with a larger --memory-limit',
  'worker-died': () => 'the program broke down over this take and went on with the others; please report it',
  'internal-error': ({ said }) => `a fault in the program, not in your file; please report it (${said})`,
  'told-before': ({ said }) => said,
};

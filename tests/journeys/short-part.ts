import { encodeWav } from '../../src/decode/index.js';
import { performTake, type TakePlan } from '../../src/demo/index.js';
import { readPart } from '../../src/score/index.js';

/** Letter, octave and length in quarters of the notes of four bars of four quarters. */
const TUNE = 'G4 1,A4 1,B4 1,C5 1,D5 2,B4 2,C5 1,A4 1,F4 1,A4 1,G4 4';
const OTHER_TUNE = 'E5 1,C5 1,E5 1,C5 1,F5 1,D5 1,F5 1,D5 1,E5 2,C5 2,D5 4';

function note(words: string): string {
  const [pitch = '', quarters = ''] = words.split(' ');
  const type = { '1': 'quarter', '2': 'half', '4': 'whole' }[quarters] ?? '';
  const spelled = `<step>${pitch[0]}</step><octave>${pitch[1]}</octave>`;
  return `<note><pitch>${spelled}</pitch><duration>${quarters}</duration><type>${type}</type></note>`;
}

function score(tune: string): string {
  const bars: string[][] = [];
  let filled = 4;
  for (const words of tune.split(',')) {
    if (filled === 4) {
      bars.push([]);
      filled = 0;
    }
    bars.at(-1)?.push(note(words));
    filled += Number(words.split(' ')[1]);
  }
  const first =
    '<attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time>' +
    '<clef><sign>G</sign><line>2</line></clef></attributes><direction><direction-type><metronome>' +
    '<beat-unit>quarter</beat-unit><per-minute>96</per-minute></metronome></direction-type><sound tempo="96"/></direction>';
  const measures = bars.map(
    (notes, i) => `<measure number="${i + 1}">${i === 0 ? first : ''}${notes.join('')}</measure>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<score-partwise version="4.0"><work><work-title>Étude: Four Bars</work-title></work>
<part-list><score-part id="P1"><part-name>Flute</part-name></score-part></part-list>
<part id="P1">${measures.join('\n')}</part></score-partwise>
`;
}

/** An invented part of four bars, as MusicXML. */
export const SHORT_PART = score(TUNE);

/** Another part of four bars. */
export const OTHER_PART = score(OTHER_TUNE).replace('Four Bars', 'Four Other Bars');

/** The same with no note in it. */
export const EMPTY_PART = score('').replace(/<measure[\s\S]*<\/measure>/, '<measure number="1"/>');

const PLAN: TakePlan = { seed: 1, voice: 'flute', sampleRateHz: 22050 };

function played(tune: string, plan: Partial<TakePlan>): Uint8Array {
  const { samples, sampleRateHz } = performTake(readPart(new TextEncoder().encode(score(tune))), { ...PLAN, ...plan });
  return encodeWav(samples, sampleRateHz);
}

/** @returns a take of the short part, as a WAV file */
export function goodTake(plan: Partial<TakePlan> = {}): Uint8Array {
  return played(TUNE, plan);
}

/** @returns a take of another part, as a WAV file */
export function otherTake(): Uint8Array {
  return played(OTHER_TUNE, {});
}

/** @returns seconds of digital silence, as a WAV file */
export function silence(seconds: number): Uint8Array {
  return encodeWav(new Float32Array(seconds * 22050), 22050);
}

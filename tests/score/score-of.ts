/** Builds small MusicXML documents for tests. Every note is written out; nothing here knows the rules that are tested. */

/** Extra content of a note, in the order MusicXML asks for. */
export interface NoteExtras {
  readonly tie?: readonly ('start' | 'stop')[];
  readonly voice?: string;
  readonly type?: string;
  readonly dots?: number;
  readonly accidental?: string;
  /** actual, normal, normal type */
  readonly tuplet?: readonly [number, number, string?];
  readonly beam?: string;
  readonly staff?: string;
  readonly notations?: string;
  readonly chord?: boolean;
  readonly grace?: boolean;
  readonly before?: string;
  readonly attributes?: string;
}

const LETTER = /^([A-G])(##|#|bb|b)?(\d)$/;
const ALTER: Readonly<Record<string, number>> = { '##': 2, '#': 1, b: -1, bb: -2 };

/** A note such as `F#4` (the pitch meant, not the sign), or `r` for a rest, lasting `duration` divisions. */
export function note(pitch: string, duration: number, extras: NoteExtras = {}): string {
  const found = LETTER.exec(pitch);
  const alter = ALTER[found?.[2] ?? ''] ?? 0;
  const alterXml = alter === 0 ? '' : `<alter>${alter}</alter>`;
  const body = found ? `<pitch><step>${found[1]}</step>${alterXml}<octave>${found[3]}</octave></pitch>` : '<rest/>';
  const [actual, normal, normalType] = extras.tuplet ?? [];
  const normalTypeXml = normalType === undefined ? '' : `<normal-type>${normalType}</normal-type>`;
  return [
    `<note${extras.attributes ? ` ${extras.attributes}` : ''}>`,
    extras.grace ? '<grace/>' : '',
    extras.before ?? '',
    extras.chord ? '<chord/>' : '',
    body,
    extras.grace ? '' : `<duration>${duration}</duration>`,
    (extras.tie ?? []).map((type) => `<tie type="${type}"/>`).join(''),
    `<voice>${extras.voice ?? '1'}</voice>`,
    extras.type ? `<type>${extras.type}</type>` : '',
    '<dot/>'.repeat(extras.dots ?? 0),
    extras.accidental ? `<accidental>${extras.accidental}</accidental>` : '',
    extras.tuplet
      ? `<time-modification><actual-notes>${actual}</actual-notes><normal-notes>${normal}</normal-notes>${normalTypeXml}</time-modification>`
      : '',
    extras.staff ? `<staff>${extras.staff}</staff>` : '',
    extras.beam ? `<beam number="1">${extras.beam}</beam>` : '',
    extras.notations ? `<notations>${extras.notations}</notations>` : '',
    '</note>',
  ].join('');
}

/** A direction with the given direction types; `after` holds offset, voice, staff or sound. */
export function direction(types: string, after = ''): string {
  return `<direction><direction-type>${types}</direction-type>${after}</direction>`;
}

/** A dynamic mark. */
export function dynamic(name: string, after = ''): string {
  return direction(`<dynamics><${name}/></dynamics>`, after);
}

/** A wedge start or stop. */
export function wedge(type: string, after = ''): string {
  return direction(`<wedge type="${type}"/>`, after);
}

/** Words. */
export function words(text: string, after = ''): string {
  return direction(`<words>${text}</words>`, after);
}

/** Opening attributes: divisions, key in fifths, time, anything after. */
export function attributes(divisions: number, fifths = 0, time = '4/4', more = ''): string {
  const [beats, beatType] = time.split('/');
  return `<attributes><divisions>${divisions}</divisions><key><fifths>${fifths}</fifths></key><time><beats>${beats}</beats><beat-type>${beatType}</beat-type></time>${more}</attributes>`;
}

/** A partwise document of one part from the contents of its bars, numbered from 1. */
export function scoreOf(bars: readonly string[], head = ''): Uint8Array {
  const measures = bars.map((bar, i) =>
    bar.startsWith('<measure') ? bar : `<measure number="${i + 1}">${bar}</measure>`,
  );
  return bytesOf(
    `<?xml version="1.0" encoding="UTF-8"?>\n<score-partwise version="4.0">${head}<part-list><score-part id="P1"><part-name>Flute</part-name></score-part></part-list><part id="P1">${measures.join('\n')}</part></score-partwise>`,
  );
}

/** UTF-8 bytes of a text. */
export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** A threshold with its unit and where it comes from. */
export interface Standard {
  readonly value: number;
  readonly unit: string;
  readonly source: string;
}

/** What a take is judged by unless the teacher says otherwise. */
export const STANDARDS = {
  /** surer than this, a wrong pitch is a `fix` */
  noteConfidence: { value: 0.55, unit: 'share', source: 'working value: doubt never becomes an accusation' },
  addedSeconds: { value: 0.08, unit: 's', source: 'working value: shorter sounds may be finger noise' },
  contrastLeast: {
    value: 3,
    unit: 'dB',
    source:
      'working value, common practice: less is not heard as two levels; 1 dB is just noticeable (Slade et al. 2022)',
  },
  contrastReversed: { value: 1, unit: 'dB', source: 'just noticeable level difference (Slade et al. 2022)' },
  hairpinLeast: { value: 3, unit: 'dB', source: 'as contrastLeast' },
  fermataLeast: {
    value: 1.25,
    unit: 'times',
    source: 'reference texts: longer than written, at the player’s discretion',
  },
  fermataMost: { value: 3, unit: 'times', source: 'reference texts: about twice is usual' },
  fermataMargin: {
    value: 0.08,
    unit: 'share',
    source: 'twice the measuring error of a fermata’s ratio on rendered takes',
  },
  tuningWatch: {
    value: 15,
    unit: 'cents',
    source: 'tolerance about 25 cents (Larrouy-Maestri 2018), less the error of a room’s tuning',
  },
  noteWatch: { value: 25, unit: 'cents', source: 'tolerance about 25 cents (Larrouy-Maestri 2018)' },
  noteFix: { value: 32, unit: 'cents', source: 'tolerance 25 cents plus the measuring error of one held note' },
  noteSeconds: { value: 0.25, unit: 's', source: 'working value: the ear needs a held note to hear tuning' },
  tempoWatch: {
    value: 0.1,
    unit: 'share',
    source: 'working value, common practice: well beyond the noticeable 3 % (Drake & Botte 1993)',
  },
  tempoSteady: { value: 0.03, unit: 'share', source: 'drift noticeable at about 3 % (Drake & Botte 1993)' },
  inTune: { value: 10, unit: 'cents', source: 'just noticeable (Hill & Summers 2007)' },
} as const satisfies Record<string, Standard>;

export type Standards = { readonly [K in keyof typeof STANDARDS]: Standard };

/**
 * What is expected of a place, in English as the judges say it, and the same in German. `{n}` stands for a number and `{}`
 * for whatever else is put in, in the same order.
 */
export const GERMAN_SENTENCES: Readonly<Record<string, string>> = {
  'plainly louder than the notes around it': 'deutlich lauter als die Noten daneben',
  'at least {n} softer after the attack': 'nach dem Anfang mindestens {n} leiser',
  'at least {n}': 'mindestens {n}',
  'at most −{n}': 'höchstens −{n}',
  'within {n}': 'innerhalb von {n}',
  'within {n} %': 'innerhalb von {n} %',
  'about {n}': 'etwa {n}',
  'about half': 'etwa die Hälfte',
  'at its end': 'am Ende',
  '{n} to {n}': '{n} bis {n}',
  '{n} %': '{n} %',
  'no gap under the slur': 'keine Lücke unter dem Bogen',
  'no wait': 'kein Warten',
  'no breath here': 'kein Atmen hier',
  'the next note on its beat': 'die nächste Note auf ihrem Schlag',
  'on the beat': 'auf dem Schlag',
  'the same tempo from beginning to end': 'dasselbe Tempo vom Anfang bis zum Ende',
};

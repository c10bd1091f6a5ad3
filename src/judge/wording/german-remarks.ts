/**
 * What a copyist would point out in a part, as the room `score` says it in English, and the same in German. `{n}` stands
 * for a number and `{}` for whatever else is put in, in the same order.
 */
export const GERMAN_REMARKS: Readonly<Record<string, string>> = {
  'Voice {} is read; 1 note is in other voices or on other staves.':
    'Gelesen wird Stimme {}; 1 Note steht in anderen Stimmen oder Systemen.',
  'Voice {} is read; {n} notes are in other voices or on other staves.':
    'Gelesen wird Stimme {}; {n} Noten stehen in anderen Stimmen oder Systemen.',
  'Bar {}: a repeat sign stands within the bar; it is read as standing at its end.':
    'Takt {}: Ein Wiederholungszeichen steht mitten im Takt; es gilt, als stünde es am Ende.',
  'Bar {}: the sign that repeats the bar before is not read out; the bar counts as a rest.':
    'Takt {}: Das Zeichen, das den Takt davor wiederholt, wird nicht ausgeführt; der Takt gilt als Pause.',
  "Bar {}: the score is at concert pitch; the player's own part is written in another key.":
    'Takt {}: Die Noten stehen klingend da; die eigene Stimme ist in einer anderen Tonart notiert.',
  'Bar {} is too long: it holds {}, its time signature asks for {}.':
    'Takt {} ist zu lang: Er enthält {}, die Taktart verlangt {}.',
  'Bar {} is too short: it holds {}, its time signature asks for {}.':
    'Takt {} ist zu kurz: Er enthält {}, die Taktart verlangt {}.',
  '{n} quarter': '{n} Viertel',
  '{n} quarters': '{n} Viertel',
  'Bar {}: a slur begins and has no end.': 'Takt {}: Ein Bogen beginnt und hat kein Ende.',
  'Bar {}: the microtone on {} is read as the nearest semitone.':
    'Takt {}: Der Mikroton auf {} wird als nächster Halbton gelesen.',
  'Bar {}: {} is meant with a {} sign that is not printed.':
    'Takt {}: Zu {} fehlt ein Zeichen im Druck, das gemeint ist ({}).',
  'Bar {}: the sign at {} says {}, the file means another pitch; the pitch counts.':
    'Takt {}: Das Zeichen bei {} ({}) passt nicht zur Tonhöhe in der Datei; die Tonhöhe zählt.',
  sharp: 'Kreuz',
  flat: 'Be',
  natural: 'Auflösungszeichen',
  'double-sharp': 'Doppelkreuz',
  'sharp-sharp': 'Doppelkreuz',
  'flat-flat': 'Doppel-Be',
  'triple-sharp': 'dreifaches Kreuz',
  'triple-flat': 'dreifaches Be',
  'quarter-sharp': 'Viertelton-Kreuz',
  'quarter-flat': 'Viertelton-Be',
  'three-quarters-sharp': 'Dreiviertelton-Kreuz',
  'three-quarters-flat': 'Dreiviertelton-Be',
  other: 'anderes Zeichen',
  'natural-sharp': 'Auflösungszeichen und Kreuz',
  'natural-flat': 'Auflösungszeichen und Be',
  'Bar {}: there is a way to a coda, but no coda.': 'Takt {}: Es geht hier zu einer Coda, aber es gibt keine.',
  'Bar {}: D.S. is written, but there is no segno.': 'Takt {}: Hier steht D. S., aber es gibt kein Segno.',
  'The repeats ask for more bars than anyone plays; the rest is left out.':
    'Die Wiederholungen verlangen mehr Takte, als irgendjemand spielt; der Rest ist weggelassen.',
  'Bar {}: the {} wedge has no end.': 'Takt {}: Die Gabel hat kein Ende ({}).',
  'Bar {}: no note begins under the {}, so it is not measured.':
    'Takt {}: Unter dieser Gabel beginnt keine Note, darum wird sie nicht gemessen ({}).',
  'Bar {}: the dynamic "{}" is not known.': 'Takt {}: Das Lautstärkezeichen „{}“ ist unbekannt.',
  'Bar {}: the metronome mark means {n} quarters a minute, the file plays {n}; the mark counts.':
    'Takt {}: Die Metronomangabe meint {n} Viertel in der Minute, die Datei spielt {n}; die Angabe zählt.',
  'No tempo is marked at the start; {n} quarters a minute are assumed.':
    'Am Anfang steht kein Tempo; angenommen werden {n} Viertel in der Minute.',
};

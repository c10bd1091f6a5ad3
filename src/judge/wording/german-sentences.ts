/**
 * What the rooms below say in English, and the same in German: reasons, cautions, and what is expected. `{n}` stands for
 * a number and `{}` for whatever else is put in, in the same order.
 */
export const GERMAN_SENTENCES: Readonly<Record<string, string>> = {
  // reasons why there is no number
  'no note was heard': 'kein Ton war zu hören',
  'the note was not heard': 'die Note war nicht zu hören',
  'the note is too short': 'die Note ist zu kurz',
  'the note is too short or too unsteady': 'die Note ist zu kurz oder zu unruhig',
  'the note is lost in the noise of the room': 'die Note geht im Rauschen des Raums unter',
  'too few notes are followed by silence to hear the room': 'auf zu wenige Noten folgt Stille, um den Raum zu hören',
  'after the notes the sound is gone too soon, or lost in noise, to hear the room':
    'nach den Noten ist der Klang zu früh weg oder im Rauschen verloren, um den Raum zu hören',
  'the notes around it were not heard one after the other': 'die Noten daneben waren nicht nacheinander zu hören',
  'too few notes with a steady pitch': 'zu wenige Töne mit ruhiger Tonhöhe',
  'too few steady notes around it to know the tempo': 'zu wenige sichere Noten daneben, um das Tempo zu kennen',
  'too few bars with steady notes': 'zu wenige Takte mit sicheren Noten',
  'too few notes were heard in it': 'zu wenige Noten daraus waren zu hören',
  'too few notes were heard under this mark': 'zu wenige Noten unter diesem Zeichen waren zu hören',
  'too few notes were heard under {}': 'zu wenige Noten unter {} waren zu hören',
  'too few notes that come back loud and soft': 'zu wenige Töne, die laut und leise wiederkehren',
  'too few notes to know how loud the instrument is by itself in each register':
    'zu wenige Noten, um zu wissen, wie laut das Instrument in jeder Lage von selbst ist',
  'loud and soft are too much alike': 'laut und leise sind einander zu ähnlich',
  'what was played does not fit this part': 'was gespielt wurde, passt nicht zu diesen Noten',
  'a fermata leaves open when the next note is due': 'eine Fermate lässt offen, wann die nächste Note kommt',
  'no playing could be heard clearly enough': 'kein Spiel war deutlich genug zu hören',
  'the take was not reviewed': 'die Aufnahme wurde nicht beurteilt',
  'the program that wrote this result did not keep it':
    'das Programm, das dieses Ergebnis schrieb, hat es nicht festgehalten',

  // cautions about the recording
  'The recording is too loud in places and clips: loud notes cannot be compared exactly.':
    'Die Aufnahme ist stellenweise zu laut und übersteuert: Laute Töne lassen sich nicht genau vergleichen.',
  'There is much noise in the recording: soft notes may be lost in it.':
    'In der Aufnahme ist viel Rauschen: Leise Töne können darin untergehen.',
  'The room rings long: gaps between notes fill up, so slurs and short notes are not told apart surely.':
    'Der Raum hallt lang nach und füllt die Lücken zwischen den Noten: Gebundene und kurze Noten sind nicht sicher zu unterscheiden.',
  'The recorder seems to have changed its level by itself. So dynamics are not judged.':
    'Der Rekorder hat den Pegel wohl selbst verändert. Darum wird die Lautstärke nicht beurteilt.',
  'The whole take sounds {} {} than this part.{} Everything else here is compared at that pitch.':
    'Die ganze Aufnahme klingt {} {} als diese Noten.{} Alles andere hier ist in dieser Tonhöhe verglichen.',
  ' It may have been read from the part for another instrument.':
    ' Vielleicht wurde aus den Noten für ein anderes Instrument gespielt.',
  'an octave': 'eine Oktave',
  '1 semitones': 'einen Halbton',
  '{n} semitones': '{n} Halbtöne',
  higher: 'höher',
  lower: 'tiefer',
  'the recorder did not write the length of the recording; it was read to the end of the file':
    'Der Rekorder hat die Länge der Aufnahme nicht festgehalten; sie wurde bis zum Ende der Datei gelesen.',
  'the file breaks off: it should hold {n} s and holds {n} s':
    'Die Datei bricht ab: Sie sollte {n} s lang sein und ist {n} s lang.',
  'the file is damaged or cut off after {n} s; only what stands before it was heard':
    'Die Datei ist nach {n} s beschädigt oder abgeschnitten; gehört wurde nur, was davor steht.',
  '1 damaged sample was replaced by silence': '1 beschädigter Abtastwert wurde durch Stille ersetzt.',
  '{n} damaged {} replaced by silence': '{n} beschädigte Abtastwerte wurden durch Stille ersetzt.',
  '{} is empty and was left out': 'Leer und darum weggelassen: {}.',
  '{} are empty and were left out': 'Leer und darum weggelassen: {}.',
  'the channels cancel each other (one is upside down); only {} was used':
    'Die Kanäle löschen einander aus (einer ist umgepolt); verwendet wurde nur: {}.',
  'the channels partly cancel each other; only {} was used':
    'Die Kanäle löschen einander zum Teil aus; verwendet wurde nur: {}.',
  'the channels together are noisier than one of them; only {} was used':
    'Zusammen rauschen die Kanäle mehr als einer allein; verwendet wurde nur: {}.',
  'the channels are of very different loudness; only {} was used':
    'Die Kanäle sind sehr verschieden laut; verwendet wurde nur: {}.',
  'the left channel': 'linker Kanal',
  'the right channel': 'rechter Kanal',
  'channel {n}': 'Kanal {n}',

  // what is expected
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

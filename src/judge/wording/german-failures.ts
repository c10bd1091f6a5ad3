/**
 * Why a file could not be read or a take not be reviewed, in English as the rooms say it, and in German for the director.
 * `{n}` stands for a number and `{}` for whatever else is put in, in the same order.
 */
export const GERMAN_FAILURES: Readonly<Record<string, string>> = {
  // files that are no recording, or a damaged one
  'the file is empty; save the take as WAV (16 or 24 bit PCM)':
    'Die Datei ist leer; die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'the WAV file ends after {n} bytes; record or copy the take again':
    'Die WAV-Datei endet nach {n} Bytes; die Aufnahme neu machen oder neu kopieren.',
  'this is {}; save the take as WAV (16 or 24 bit PCM)':
    'Das ist {}; die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'this is {}, which is not read; save the take as WAV or M4A':
    'Das ist {}, und das wird nicht gelesen; die Aufnahme als WAV oder M4A speichern.',
  'this is {}; a recording is needed, as it was made or saved as WAV':
    'Das ist {}; nötig ist eine Aufnahme, so wie sie gemacht wurde, oder als WAV gespeichert.',
  'this is {} in which no sound is found; save the take as WAV or M4A':
    'Das ist {}, und darin ist kein Ton zu finden; die Aufnahme als WAV oder M4A speichern.',
  'this is {} whose sound is coded as {}, which is not read; save the take as WAV or M4A':
    'Das ist {} mit Ton der Art {}, und die wird nicht gelesen; die Aufnahme als WAV oder M4A speichern.',
  'this file says {n} channels at {n} Hz; {n} to {n} channels at {n} to {n} Hz can be read':
    'Diese Datei nennt {n} Kanäle mit {n} Hz; lesbar sind {n} bis {n} Kanäle mit {n} bis {n} Hz.',
  'the recording holds only {n} ms of sound; record or copy the take again':
    'Die Aufnahme enthält nur {n} ms Ton; die Aufnahme neu machen oder neu kopieren.',
  'the recording is more than an hour long; cut it to the take':
    'Die Aufnahme ist länger als eine Stunde; auf das Stück kürzen.',
  'this is {} that is damaged; copy or record the take again':
    'Das ist {}, aber beschädigt; die Aufnahme neu kopieren oder neu machen.',
  'this is {} at which the decoder broke down, so it is damaged; copy or record the take again':
    'Das ist {}, und das Lesen ist daran gescheitert, also beschädigt; die Aufnahme neu kopieren oder neu machen.',
  'this is {} whose decoding does not end, so it is damaged; copy or record the take again':
    'Das ist {}, und das Lesen nimmt kein Ende, also beschädigt; die Aufnahme neu kopieren oder neu machen.',
  'this is {} that needs more memory than a take should; cut it to the take, or record it again':
    'Das ist {} und braucht mehr Speicher, als eine Aufnahme soll; auf das Stück kürzen oder neu aufnehmen.',
  'to read this the sound library libasound2 is needed; install it (apt install libasound2), or save the take as WAV':
    'Um das zu lesen, ist die Tonbibliothek libasound2 nötig; sie installieren (apt install libasound2) oder die Aufnahme als WAV speichern.',
  'this kind of file cannot be read on this machine; save the take as WAV':
    'Diese Art Datei ist auf diesem Rechner nicht zu lesen; die Aufnahme als WAV speichern.',
  'a kind of AAC that is not common': 'seltenes AAC',
  'the WAV file holds no audio; record or copy the take again':
    'In der WAV-Datei ist kein Ton; die Aufnahme neu machen oder neu kopieren.',
  'the WAV file holds only {n} ms of audio; record or copy the take again':
    'In der WAV-Datei sind nur {n} ms Ton; die Aufnahme neu machen oder neu kopieren.',
  'the recording is {n} minutes long; cut it to the take, 60 minutes at most':
    'Die Aufnahme ist {n} Minuten lang; auf das Stück kürzen, höchstens 60 Minuten.',
  'the WAV file has no audio in it (no data chunk); export or record the take again as WAV (16 or 24 bit PCM)':
    'In der WAV-Datei ist kein Ton (kein data-Block); die Aufnahme neu machen oder neu als WAV ausgeben (PCM, 16 oder 24 Bit).',
  'the WAV file does not say how its audio is stored (no fmt chunk); export or record the take again as WAV (16 or 24 bit PCM)':
    'Die WAV-Datei sagt nicht, wie ihr Ton gespeichert ist (kein fmt-Block); die Aufnahme neu machen oder neu als WAV ausgeben (PCM, 16 oder 24 Bit).',
  'the WAV header is damaged: {}; export or record the take again':
    'Der Kopf der WAV-Datei ist beschädigt: {}; die Aufnahme neu machen oder neu ausgeben.',
  'its extensible format is cut short': 'die erweiterte Beschreibung ist abgeschnitten',
  'its format description is cut short': 'die Beschreibung ist abgeschnitten',
  'it says a sample rate of 0 Hz': 'er nennt eine Abtastrate von 0 Hz',
  'it says 0 channels': 'er nennt 0 Kanäle',
  'it says 0 bits a sample': 'er nennt 0 Bit je Abtastwert',
  'it says {n} × {n} bit and yet {n} bytes a frame instead of {n}':
    'er nennt {n} × {n} Bit und doch {n} Bytes für alle Kanäle statt {n}',
  'this WAV file holds audio of an unknown kind (not PCM); save the take as WAV (16 or 24 bit PCM)':
    'Der Ton dieser WAV-Datei ist von unbekannter Art (nicht PCM); die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'this WAV file says a sample rate of {n} Hz, {n} to {n} Hz can be read; save the take as WAV (16 or 24 bit PCM)':
    'Diese WAV-Datei nennt eine Abtastrate von {n} Hz, lesbar sind {n} bis {n} Hz; die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'this WAV file says {n} channels, 1 to {n} can be read; save the take as WAV (16 or 24 bit PCM)':
    'Diese WAV-Datei nennt {n} Kanäle, lesbar sind 1 bis {n}; die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'this WAV file says {n} bit {}, which is not a usual WAV format; save the take as WAV (16 or 24 bit PCM)':
    'Diese WAV-Datei nennt {n} Bit {}, das ist für WAV nicht üblich; die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'this WAV file is compressed as {}, which cannot be measured; save the take as WAV (16 or 24 bit PCM)':
    'Diese WAV-Datei ist komprimiert ({}) und nicht zu messen; die Aufnahme als WAV speichern (PCM, 16 oder 24 Bit).',
  'an unknown coding (format tag {})': 'Art unbekannt, Kennzahl {}',
  'floating point': 'Gleitkomma',

  // what a file is instead
  'a RIFF file without audio': 'eine RIFF-Datei ohne Ton',
  'no WAV file': 'keine WAV-Datei',
  'no recording of a known kind': 'keine Aufnahme bekannter Art',
  'a 3GP file': 'eine 3GP-Datei',
  'a QuickTime film': 'eine QuickTime-Filmdatei',
  'an MPEG stream': 'eine MPEG-Stromdatei',
  'an AMR file of several channels': 'eine AMR-Datei mit mehreren Kanälen',
  'a FLAC file': 'eine FLAC-Datei',
  'an MP3 file': 'eine MP3-Datei',
  'an Ogg file': 'eine Ogg-Datei',
  'an M4A or MP4 file': 'eine M4A- oder MP4-Datei',
  'an AIFF file': 'eine AIFF-Datei',
  'a WMA file': 'eine WMA-Datei',
  'a big-endian WAV file (RIFX)': 'eine WAV-Datei mit umgekehrten Bytes (RIFX)',
  'a Wave64 file': 'eine Wave64-Datei',
  'an AU file': 'eine AU-Datei',
  'a CAF file': 'eine CAF-Datei',
  'a WavPack file': 'eine WavPack-Datei',
  'an AMR file': 'eine AMR-Datei',
  'an AAC file': 'eine AAC-Datei',
  'a MIDI file': 'eine MIDI-Datei',
  'a WebM or Matroska file': 'eine WebM- oder Matroska-Datei',
  'a ZIP archive': 'ein ZIP-Archiv',
  'a PDF file': 'eine PDF-Datei',
  'a text file': 'eine Textdatei',

  // the disk
  'there is no such file; check the name': 'Die Datei gibt es nicht; den Namen prüfen.',
  'this may not be read; ask its owner for leave to read it':
    'Das darf nicht gelesen werden; den Besitzer um Erlaubnis bitten.',
  'this is a link that leads back to itself; give the file it should lead to':
    'Das ist eine Verknüpfung, die auf sich selbst zeigt; die Datei angeben, auf die sie zeigen soll.',
  'this is a folder; a file is needed': 'Das ist ein Ordner; nötig ist eine Datei.',
  'this is not an ordinary file; a file on a disk is needed':
    'Das ist keine gewöhnliche Datei; nötig ist eine Datei auf einem Datenträger.',
  'this file has {n} MB; at most {n} MB are read': 'Diese Datei hat {n} MB; gelesen werden höchstens {n} MB.',
  'this file changed while it was read; wait until it is recorded or copied, then run the same command again':
    'Diese Datei hat sich beim Lesen geändert; warten, bis sie aufgenommen oder kopiert ist, und denselben Befehl noch einmal geben.',
  'cannot write here ({}); choose a folder you may write to':
    'Hier ist nicht zu schreiben ({}); einen Ordner wählen, in den man schreiben darf.',
  'not allowed': 'nicht erlaubt',
  'the disk is read-only': 'der Datenträger ist schreibgeschützt',
  'the disk is full': 'der Datenträger ist voll',
  'the disk is full for you': 'der eigene Platz auf dem Datenträger ist voll',
  'files may not become this large here': 'Dateien dürfen hier nicht so groß werden',
  'a file is in the way of the folder': 'eine Datei liegt dort, wo der Ordner sein soll',
  'a folder is in the way of the file': 'ein Ordner liegt dort, wo die Datei sein soll',
  'the folder cannot be made': 'der Ordner lässt sich nicht anlegen',
  'the name is too long': 'der Name ist zu lang',
  'a link here leads back to itself': 'eine Verknüpfung hier zeigt auf sich selbst',
  'the disk says {}': 'der Datenträger meldet {}',

  // the program
  'listening to this took longer than a take of its length should; review it by itself with a larger --time-limit, or cut it to the étude':
    'Das Auswerten dauerte länger, als es bei dieser Länge soll; die Aufnahme allein mit größerem --time-limit auswerten oder auf die Etüde kürzen.',
  'listening to this needed more memory than a take of its length should; cut it to the étude, or review it by itself with a larger --memory-limit':
    'Das Auswerten brauchte mehr Speicher, als es bei dieser Länge soll; die Aufnahme auf die Etüde kürzen oder allein mit größerem --memory-limit auswerten.',
  'the program broke down over this take and went on with the others; please report it':
    'Das Programm ist an dieser Aufnahme gescheitert und hat mit den anderen weitergemacht; bitte melden.',
  'a fault in the program, not in your file; please report it ({})':
    'Ein Fehler im Programm, nicht in der Datei; bitte melden ({}).',

  // results of earlier weeks
  'this is no result of a take; review the take again':
    'Das ist kein Ergebnis einer Aufnahme; die Aufnahme noch einmal auswerten.',
  'this is no result of a take; give folders or files that review has written':
    'Das ist kein Ergebnis einer Aufnahme; Ordner oder Dateien angeben, die review geschrieben hat.',
  'this is not whole JSON, it may have been cut off; review the takes again':
    'Das ist kein vollständiges JSON, vielleicht wurde es abgeschnitten; die Aufnahmen noch einmal auswerten.',
  'this is a result of version {}, written by {}, and version {n} is read; use the program that wrote it, or review the take again with this one':
    'Das ist ein Ergebnis der Version {}, geschrieben von {}, und gelesen wird Version {n}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  'this is a result of version {}, and version {n} is read; use the program that wrote it, or review the take again with this one':
    'Das ist ein Ergebnis der Version {}, und gelesen wird Version {n}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  'this is a result that names no version, written by {}, and version {n} is read; use the program that wrote it, or review the take again with this one':
    'Das ist ein Ergebnis ohne Version, geschrieben von {}, und gelesen wird Version {n}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  'this is a result that names no version, and version {n} is read; use the program that wrote it, or review the take again with this one':
    'Das ist ein Ergebnis ohne Version, und gelesen wird Version {n}; das Programm verwenden, das es schrieb, oder die Aufnahme mit diesem noch einmal auswerten.',
  'this result is not as its schema says, at {}; review the take again':
    'Dieses Ergebnis ist nicht so, wie sein Schema sagt: {}; die Aufnahme noch einmal auswerten.',
  'the top': 'ganz oben',
};

import type { FindingsWords } from '../../shapes/findings.js';
import { NUMBERS } from '../numbers.js';

const { hundredths, whole } = NUMBERS;

/** What is said of articulation. */
export const ARTICULATION = {
  'slur-broken': {
    headline: 'Der Bogen ist unterbrochen',
    text: (f) => `Der Bogen bricht vor dieser Note ab: Da ist eine Lücke von ${hundredths(f.milliseconds)} Sekunden.`,
    why: 'Unter einem Bogen strömt die Luft weiter, und die Zunge bleibt weg bis zur nächsten Gruppe.',
    practice: 'Lass die Luft durch den Wechsel strömen. Spiel die zwei Noten zehnmal langsam gebunden, ohne Zunge.',
    caption: 'Zwei kurze Striche zeigen, wo der Bogen abbricht.',
  },
  'staccato-long': {
    headline: 'Die Staccato-Noten sind lang',
    text: (f) =>
      f.all
        ? `Die meisten Staccato-Noten klingen ${whole(f.percent)} Prozent ihrer Zeit. Es kann der Raum sein: Hör, ob die Lücken da sind.`
        : `Diese Staccato-Note klingt ${whole(f.percent)} Prozent ihrer Zeit${f.usual === null ? '' : `; deine anderen ${whole(f.usual)}`}.`,
    why: 'Ein Punkt will Platz vor der nächsten Note; der Platz gehört zum Rhythmus.',
    practice: 'Beende den Ton früh und lass Stille. Spiel vier davon auf einem Ton und hör auf die Lücken.',
    caption: 'Der dicke Balken zeigt, wie lang du die Note gehalten hast, der feine ihre Zeit bis zur nächsten Note.',
  },
  'accent-weak': {
    headline: 'Der Akzent ist kaum zu hören',
    text: (f) =>
      f.falls
        ? 'Diese Note soll nur am Anfang laut sein. Sie bleibt fast so laut, wie sie begann.'
        : `Der Akzent hebt sich nicht ab: Er ist ${f.db < 0 ? 'leiser als' : 'so laut wie'} die Noten um ihn herum.`,
    why: 'Ein Akzent zeigt, wo das Gewicht liegt.',
    practice: (f) =>
      f.falls
        ? 'Spiel die Note zweimal: zuerst nur den Anfang, dann nur das leise Ende. Setz dann beides zusammen.'
        : 'Fang den Ton mit schneller Luft und klarer Zunge an, dann lass gleich nach. Lass die Noten daneben, wie sie sind.',
    caption: 'Der Akzent steht noch einmal über seiner Note.',
  },
} satisfies Partial<FindingsWords>;

/** For a page that a player practises from. */
export const PRACTICE_CAUTION =
  'Practise with care. Tired lips, fingers and breath need rest before they hurt. Stop when something hurts, when you are dizzy from breathing too much, or when your ears ring after loud playing, and ask your teacher or a doctor.';

/** For every page with results. */
export const PANEL_CAUTION =
  'These results support a panel; they never replace one. The recording stays on this machine. Your school’s and your country’s rules on keeping recordings of minors apply.';

/** When some letters could not be drawn. */
export const LETTERS_MISSING_NOTE =
  'Words in [brackets] stand for letters that this page’s type does not hold. The result file beside this page holds the full text.';

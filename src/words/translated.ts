/** The shape of a set of words, in whatever language: the English words give it. */
export type Translated<T> = T extends string
  ? string
  : T extends number
    ? number
    : T extends (...values: infer Values) => infer Said
      ? (...values: Values) => Widened<Said>
      : { readonly [Key in keyof T]: Translated<T[Key]> };

/** What a function of words gives: a sentence, none, or several. */
type Widened<Said> = Said extends string ? string : Said extends readonly string[] ? readonly string[] : Said;

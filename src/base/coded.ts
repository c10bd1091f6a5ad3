/** What one fact may be: a list of words means one of them, `code` another code with its facts. */
export type FactShape = 'number' | 'numbers' | 'text' | 'texts' | 'yes-or-no' | 'code' | readonly string[];

/** Codes, each with the facts that belong to it, by name. */
export type CodeTable = Readonly<Record<string, Readonly<Record<string, FactShape>>>>;

/** A code with its facts as a file may hold them; nobody has looked whether they belong together. */
export interface LooseCode {
  readonly code: string;
  readonly facts?: Readonly<Record<string, unknown>> | undefined;
}

interface Facts {
  readonly number: number;
  readonly numbers: readonly number[];
  readonly text: string;
  readonly texts: readonly string[];
  readonly 'yes-or-no': boolean;
  readonly code: LooseCode;
}

type Fact<S> = S extends keyof Facts ? Facts[S] : S extends readonly (infer Word)[] ? Word : never;

/** The facts of one code. */
export type FactsOf<S> = { readonly [N in keyof S]: Fact<S[N]> };

/** One of the codes of a table with its facts: all that is known before anything is put into words. */
export type Coded<T> = { [K in keyof T]: { readonly code: K; readonly facts: FactsOf<T[K]> } }[keyof T];

/** A code, and after it its facts where it has some. */
export type CodeArguments<T, K extends keyof T = keyof T> = {
  [C in K]: keyof T[C] extends never ? [code: C] : [code: C, facts: FactsOf<T[C]>];
}[K];

/** What every code of a table is in one language; the compiler keeps it complete. */
export type Sayings<T> = { readonly [K in keyof T]: (facts: FactsOf<T[K]>) => string };

/**
 * @param table codes and the facts that belong to them
 * @param value a code and facts that came from a file
 * @returns whether the code is in the table and has all its facts, each of the right kind
 */
export function isCoded<T extends CodeTable>(table: T, value: LooseCode): value is Coded<T> & LooseCode {
  const shapes = Object.hasOwn(table, value.code) ? table[value.code] : undefined;
  if (shapes === undefined) return false;
  return Object.entries(shapes).every(([name, shape]) => isFact(shape, value.facts?.[name]));
}

function isFact(shape: FactShape, value: unknown): boolean {
  if (typeof shape !== 'string') return typeof value === 'string' && shape.includes(value);
  return KINDS[shape](value);
}

const isNumber = (value: unknown): boolean => typeof value === 'number' && Number.isFinite(value);
const isText = (value: unknown): boolean => typeof value === 'string';

const KINDS: Readonly<Record<keyof Facts, (value: unknown) => boolean>> = {
  number: isNumber,
  numbers: (value) => Array.isArray(value) && value.every(isNumber),
  text: isText,
  texts: (value) => Array.isArray(value) && value.every(isText),
  'yes-or-no': (value) => typeof value === 'boolean',
  code: (value) => typeof value === 'object' && value !== null && 'code' in value && isText(value.code),
};

/**
 * @param value a code with its facts
 * @returns the same as documents hold it: facts are left out where there are none
 */
export function codeAsData<C extends string>(value: {
  readonly code: C;
  readonly facts: object;
}): { code: C; facts?: Record<string, unknown> } {
  const facts = { ...value.facts };
  return Object.keys(facts).length === 0 ? { code: value.code } : { code: value.code, facts };
}

/** Codes of what a use case may refuse. Few and stable. */
export type RefusalCode = 'not-found' | 'not-allowed' | 'conflict' | 'invalid' | 'too-many' | 'unavailable';

/**
 * The one shape of an expected failure: a code, a sentence for the person, and, where one field is to blame, its name.
 * Thrown inside a transaction so that nothing is kept; turned into a value by attempt() at the edge.
 */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly field: string | undefined;

  constructor(code: RefusalCode, sentence: string, field?: string) {
    super(sentence);
    this.name = 'Refusal';
    this.code = code;
    this.field = field;
  }
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: Refusal };

/** Runs a use case and returns its refusal as a value; bugs still throw. */
export async function attempt<T>(work: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, refusal: error };
    throw error;
  }
}

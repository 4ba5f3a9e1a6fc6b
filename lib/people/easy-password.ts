import type { ZxcvbnFactory } from '@zxcvbn-ts/core';

/** Longer ones are judged by their beginning: the time that judging takes grows with the square of the length. */
const JUDGED = 40;
/** Fewer guesses than 10^8 (score 3) fall to somebody who has the hashes; common passwords and what is made of them need fewer. */
const LEAST_SCORE = 3;

let factory: Promise<ZxcvbnFactory> | undefined;

/**
 * Whether a password is among the 49,000 commonest of the list that comes with zxcvbn, or made of a few of them: with a
 * year behind it, twice, backwards, with digits for letters, or along the rows of a keyboard (ASVS 5.0 6.2.4).
 *
 *     await isEasyToGuess('P@ssw0rd2026!')  →  true
 */
export async function isEasyToGuess(password: string, personal: readonly string[] = []): Promise<boolean> {
  factory ??= load();
  const { score } = (await factory).check(password, [...personal]);
  return score < LEAST_SCORE;
}

// Two megabytes that only somebody who changes a password needs.
async function load(): Promise<ZxcvbnFactory> {
  const [{ ZxcvbnFactory: Factory }, { adjacencyGraphs, dictionary }] = await Promise.all([
    import('@zxcvbn-ts/core'),
    import('@zxcvbn-ts/language-common'),
  ]);
  return new Factory({ dictionary, graphs: adjacencyGraphs, maxLength: JUDGED });
}

/** What can be found, as texts that count more or less. */
export type SearchEntry = { id: string; fields: readonly { text: string; weight: number }[] };

export type SearchHit = { id: string; score: number };

// Words that people write around what they look for.
const SMALL_WORDS = new Set(
  'a an and at be broken can do does for fix fixed from has have how i in is it its me mend my need not of on or please repair repaired repairs that the there this to will with won t s'.split(
    ' ',
  ),
);

/** Lower case, accents and punctuation dropped, words kept apart: 'Türn-Key GB·8' is 'turn key gb 8'. */
export function foldText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/**
 * Entries that fit what was typed, best first; entries of the same score keep their order.
 *
 * Every word typed, small words aside, should be found in an entry: whole, as the beginning or inside of a word, with one typo
 * (a letter wrong, missing, too many, or two swapped; words of four letters or more), or run together across words ('gb8' finds 'GB-8').
 * When nothing holds all of them, entries holding at least half are given. Nothing typed finds nothing.
 * Example: 'recoder usb' finds a field recorder whose repair is called 'USB port replaced'.
 */
export function rankEntries(typed: string, entries: readonly SearchEntry[]): SearchHit[] {
  const words = searchWords(typed);
  if (words.length === 0) return [];
  // The repairs of a model share its words: each text is folded and fitted once.
  const fitOfText = new Map<string, readonly number[]>();
  const fits = (text: string) => {
    const known = fitOfText.get(text) ?? fitsOf(words, text);
    fitOfText.set(text, known);
    return known;
  };
  const scored = entries.map((entry) => scoreEntry(words, entry, fits));
  const whole = scored.filter((each) => each.found === words.length);
  const chosen =
    whole.length > 0 ? whole : scored.filter((each) => each.found > 0 && each.found * 2 >= words.length);
  return chosen.sort((a, b) => b.score - a.score).map(({ id, score }) => ({ id, score }));
}

function searchWords(typed: string): string[] {
  const words = [...new Set(foldText(typed.slice(0, LONGEST_QUERY)).split(' '))].filter(
    (word) => word !== '',
  );
  const large = words.filter((word) => !SMALL_WORDS.has(word));
  return large.length > 0 ? large : words;
}

const LONGEST_QUERY = 120;

function scoreEntry(
  words: readonly string[],
  { id, fields }: SearchEntry,
  fits: (text: string) => readonly number[],
): SearchHit & { found: number } {
  const bests = words.map((_, i) =>
    Math.max(0, ...fields.map(({ text, weight }) => weight * (fits(text)[i] ?? 0))),
  );
  return {
    id,
    score: bests.reduce((sum, best) => sum + best, 0),
    found: bests.filter((best) => best > 0).length,
  };
}

/** How well each word fits a text. */
function fitsOf(words: readonly string[], text: string): number[] {
  const plain = foldText(text);
  const field = { words: plain.split(' '), joined: plain.replaceAll(' ', '') };
  return words.map((word) => fitOf(word, field));
}

const EXACT = 8;
const BEGINS = 6;
const JOINED = 5;
const INSIDE = 3;
const TYPO = 2;

function fitOf(word: string, field: { words: readonly string[]; joined: string }): number {
  if (field.words.includes(word)) return EXACT;
  if (field.words.some((each) => each.startsWith(word))) return BEGINS;
  const isLong = word.length >= 3;
  if (isLong && /\d/.test(word) && field.joined.includes(word)) return JOINED;
  if (isLong && field.words.some((each) => each.includes(word))) return INSIDE;
  if (word.length >= 4 && field.words.some((each) => isOneTypo(word, each))) return TYPO;
  return 0;
}

/**
 * Whether two words differ by one typo at most: one letter replaced, added or left out, or two neighbours swapped
 * (optimal string alignment distance of 1). The second may go on after the first: 'recroder' fits 'recorders'.
 */
export function isOneTypo(typed: string, word: string): boolean {
  if (isNear(typed, word)) return true;
  if (word.length <= typed.length) return false;
  return [typed.length - 1, typed.length, typed.length + 1].some((length) =>
    isNear(typed, word.slice(0, length)),
  );
}

function isNear(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start += 1;
  const [restA, restB] = [a.slice(start), b.slice(start)];
  if (restA.length === restB.length) {
    const isSwap = restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
    return restA.slice(1) === restB.slice(1) || isSwap;
  }
  return restA.length > restB.length ? restA.slice(1) === restB : restA === restB.slice(1);
}

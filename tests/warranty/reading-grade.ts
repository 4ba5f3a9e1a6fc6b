/**
 * The Flesch-Kincaid grade of a text: 0.39 words a sentence + 11.8 syllables a word - 15.59 (Kincaid, Fishburne, Rogers and
 * Chissom 1975; formula from memory). Grade 6 is read at 11 to 12. Syllables are counted as groups of vowels, a silent
 * final e left out; numbers, and words with digits, count as one syllable each.
 */
export function readingGrade(text: string): number {
  const sentences = text.split(/[.!?:;]+(?:\s|$)/).filter((part) => /\p{L}/u.test(part));
  const words = text.match(/[\p{L}\p{N}][\p{L}\p{N}’'-]*/gu) ?? [];
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word.toLowerCase()), 0);
  return (0.39 * words.length) / sentences.length + (11.8 * syllables) / words.length - 15.59;
}

function syllablesOf(word: string): number {
  if (/\d/.test(word)) return 1;
  const spoken = word.replace(/(?:[^laeiouy]es|[^t]ed|[^laeiouy]e)$/, '');
  return Math.max(1, spoken.match(/[aeiouy]+/g)?.length ?? 0);
}

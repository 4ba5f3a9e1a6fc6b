/**
 * Initials for a name, two or three capitals, as printed beside bench checks: 'Mira van Holt' gives 'MVH', 'Tove' 'TO'.
 * An empty name gives an empty text.
 */
export function initialsOf(name: string): string {
  const words = name
    .normalize('NFC')
    .split(/[\s-]+/u)
    .filter((word) => /^\p{L}/u.test(word));
  const [only] = words;
  if (only !== undefined && words.length === 1) return [...only].slice(0, 2).join('').toUpperCase();
  return words
    .slice(0, 3)
    .map((word) => [...word][0] ?? '')
    .join('')
    .toUpperCase();
}

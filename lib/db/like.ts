/** A text inside a pattern of LIKE or ILIKE, where `%` and `_` would stand for anything and `\` takes that from them. */
export function plainInPattern(text: string): string {
  return text.replace(/[\\%_]/g, '\\$&');
}

/**
 * What equals a text but for capitals. Prisma makes ILIKE of it and hands the text on as the pattern: without the escape
 * jo_hall@example.org would be jo.hall@example.org too.
 */
export function sameButForCapitals(text: string) {
  return { equals: plainInPattern(text), mode: 'insensitive' } as const;
}

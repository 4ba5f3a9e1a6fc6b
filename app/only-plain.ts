/**
 * Refuses what a form was bound to unless each part is a text, a number or nothing.
 *
 * The page bound a number or an id, but what arrives was sent by a browser and may be anything. The database would read
 * an object as a filter ({ startsWith: 'W' } fits every certificate), so nobody who knows no number could find one.
 * Only a forged request gets here, and it is told nothing but that it failed.
 */
export function onlyPlain(...bound: readonly unknown[]): void {
  const isPlain = bound.every(
    (part) =>
      part === null || typeof part === 'string' || (typeof part === 'number' && Number.isFinite(part)),
  );
  if (!isPlain) throw new TypeError('An action was called with something that no form binds');
}

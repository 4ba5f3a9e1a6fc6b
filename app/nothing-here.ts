import 'server-only';
import type { Route } from 'next';
import { redirect } from 'next/navigation';

/**
 * Ends a page whose number or link leads to nothing: a 404 with words to read.
 *
 * Not notFound(): Next 16.4 answers it with an empty body that only script fills (seen with scripts off, as with
 * forbidden()). An address that no route matches gets app/not-found.tsx as a whole page with status 404.
 */
export function nothingHere(): never {
  redirect('/nothing-here' as Route);
}

import { recordingStatements } from './recorded-statements';

/** How many statements a piece of work sends to the database, but for those that only open and close a transaction. */
export async function countingQueries<T>(work: () => Promise<T>): Promise<{ answer: T; queries: number }> {
  const { answer, sent } = await recordingStatements(work);
  return { answer, queries: sent.length };
}

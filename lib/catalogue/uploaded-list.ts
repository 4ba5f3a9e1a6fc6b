import { MEGABYTE } from '@/lib/files/rules/limits';
import { deleteFile, hasFile, putFile, readFile } from '@/lib/files/store';
import { Refusal } from '@/lib/outcome';

/** Largest file: four times what 5,000 rows take. */
export const MOST_MEGABYTES = 10;

// One file waits for each person, so that two of them never look at each other's and none is left over.
const keyFor = (userId: string) => `catalogue/waiting-${userId}.csv`;

/**
 * Keeps an uploaded list until the person has looked at what it would do; a second one takes its place. Refuses a file that is too
 * large, empty, or not text in UTF-8: guessing at another encoding would spoil names in silence.
 */
export async function keepUploadedList(userId: string, bytes: Uint8Array): Promise<void> {
  if (bytes.byteLength > MOST_MEGABYTES * MEGABYTE)
    throw new Refusal('invalid', `The file is larger than ${MOST_MEGABYTES} MB.`, 'file');
  if (textOf(bytes).trim() === '') throw new Refusal('invalid', 'The file is empty.', 'file');
  await putFile(keyFor(userId), bytes, 'text/csv; charset=utf-8');
}

/** The text of the list that a person uploaded last; null when none waits. */
export async function readUploadedList(userId: string): Promise<string | null> {
  if (!(await hasFile(keyFor(userId)))) return null;
  return textOf(await readFile(keyFor(userId)));
}

export async function forgetUploadedList(userId: string): Promise<void> {
  await deleteFile(keyFor(userId));
}

function textOf(bytes: Uint8Array): string {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (!text.includes('\0')) return text;
  } catch {
    // Told below: not UTF-8.
  }
  throw new Refusal(
    'invalid',
    'The file is not text in UTF-8. Save it from the spreadsheet as CSV in UTF-8 and choose it again.',
    'file',
  );
}

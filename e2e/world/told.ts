import type { APIResponse } from '@playwright/test';
import { textOf } from '@/tests/documents/read-pdf';
import type { Case } from './case';

/** What nobody may learn who may not open the case. */
export function everySecret({ secrets }: Case): string[] {
  return [secrets.serial, ...secrets.others];
}

/** Which of the secrets an answer tells, in its text or as a document or picture. */
export async function told(answer: APIResponse, secrets: string[]): Promise<string[]> {
  const type = answer.headers()['content-type'] ?? '';
  if (type.startsWith('image/jpeg')) return ['a photo'];
  const body = await answer.body();
  const text = type === 'application/pdf' ? textOf(new Uint8Array(body)) : body.toString('utf8');
  const letters = lettersOf(text.replace(/<[^>]*>/g, ''));
  return secrets.filter((secret) => text.includes(escaped(secret)) || letters.includes(lettersOf(secret)));
}

/** Letters and digits only: a number is written in groups that may break, in text that may be split. */
function lettersOf(text: string): string {
  return text.replace(/[^\p{L}\p{N}@]/gu, '');
}

/** As React writes it into a page. */
function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll("'", '&#x27;');
}

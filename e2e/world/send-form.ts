import type { APIRequestContext, APIResponse } from '@playwright/test';
import type { PhotoFile } from './photo';

export type Answer = { status: number; url: string; html: string; servedBy: string; requestId: string };

/** Reads a page as a browser without script would. */
export async function readPage(request: APIRequestContext, address: string): Promise<Answer> {
  return answerOf(await request.get(address));
}

/**
 * Fills in the form that has this button on a page, and sends it as a browser without script would: what stands in it
 * already goes along. Returns the page that follows.
 */
export async function sendForm(
  request: APIRequestContext,
  page: Answer,
  button: string,
  values: Record<string, string | PhotoFile>,
): Promise<Answer> {
  const form = page.html.match(/<form[\s\S]*?<\/form>/g)?.find((each) => each.includes(`>${button}`));
  if (!form) throw new Error(`No form with “${button}” at ${page.url} (${page.status})`);
  const data = new FormData();
  for (const [input] of form.matchAll(/<input [^>]*>/g)) {
    const name = attribute(input, 'name');
    const isLeftEmpty =
      /type="(file|submit)"/.test(input) ||
      (/type="(checkbox|radio)"/.test(input) && !/ checked/.test(input));
    if (name && !isLeftEmpty && !(name in values)) data.append(name, attribute(input, 'value') ?? '');
  }
  for (const [name, value] of Object.entries(values)) {
    if (typeof value === 'string') data.append(name, value);
    else data.append(name, new File([new Uint8Array(value.buffer)], value.name, { type: value.mimeType }));
  }
  return answerOf(await request.post(page.url, { multipart: data }));
}

async function answerOf(answer: APIResponse): Promise<Answer> {
  const headers = answer.headers();
  return {
    status: answer.status(),
    url: answer.url(),
    html: await answer.text(),
    servedBy: headers['x-served-by'] ?? '',
    requestId: headers['x-request-id'] ?? '',
  };
}

function attribute(tag: string, name: string): string | undefined {
  const value = new RegExp(` ${name.replace(/[$]/g, '\\$')}="([^"]*)"`).exec(tag)?.[1];
  return value
    ?.replaceAll('&quot;', '"')
    .replaceAll('&#x27;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');
}

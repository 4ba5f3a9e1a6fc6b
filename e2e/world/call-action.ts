import { readFileSync } from 'node:fs';
import type { APIRequestContext, APIResponse } from '@playwright/test';
import { z } from 'zod';
import { place } from './place';

const manifest = z.object({
  node: z.record(
    z.string(),
    z.object({
      filename: z.string(),
      exportedName: z.string(),
      workers: z.record(z.string(), z.unknown()),
    }),
  ),
});

export type BuiltAction = { action: string; id: string; page: string };

/** Every action that the running build answers to, with the id it is called by and a page that carries it. */
export function builtActions(): BuiltAction[] {
  const file = readFileSync('.next/server/server-reference-manifest.json', 'utf8');
  return Object.entries(manifest.parse(JSON.parse(file)).node).map(([id, built]) => ({
    action: `${withoutGroups(built.filename)} ${built.exportedName}`,
    id,
    page: withoutGroups(Object.keys(built.workers)[0] ?? '').replace(/\/page$/, ''),
  }));
}

/**
 * Calls an action as a program would that never opened its page: React's own wire form of (…bound, {}, FormData), in
 * which the fields come first and the list of arguments, which points at them, last.
 */
export function callAction(
  request: APIRequestContext,
  o: { id: string; address: string; bound: readonly unknown[]; form: Readonly<Record<string, string>> },
): Promise<APIResponse> {
  const body = new FormData();
  for (const [name, value] of Object.entries(o.form)) body.append(`_1_${name}`, value);
  body.append('0', JSON.stringify([...o.bound, {}, '$K1']));
  return request.post(o.address, {
    headers: { 'Next-Action': o.id, Origin: place.origin },
    multipart: body,
    maxRedirects: 0,
  });
}

/** 'app/(front)/job/[token]/page' -> '/job/[token]/page' */
function withoutGroups(file: string): string {
  return `/${file
    .split('/')
    .slice(1)
    .filter((folder) => !/^\(.*\)$/.test(folder))
    .join('/')}`;
}

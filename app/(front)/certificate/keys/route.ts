import { keySet } from '@/lib/warranty/key-set';

/** The stable address of the keys that certificates are signed with; anyone may keep a copy to check papers offline. */
export async function GET(): Promise<Response> {
  return Response.json(await keySet(), {
    headers: { 'content-type': 'application/jwk-set+json', 'cache-control': 'public, max-age=300' },
  });
}

import { limitCaller } from '@/app/limit-caller';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { now } from '@/lib/clock';
import { PHOTO_BYTES, PHOTO_REFUSALS, storePhoto } from '@/lib/files/photos';
import { keptPhotoSlip, waitingFolder } from '@/lib/quotes/kept-photo';

/** So many photos an hour from one caller; a form takes eight at most. */
const LIMIT = { max: 60, windowSeconds: 3600 };

/**
 * One photo ahead of its form, so that the page can show how far it is. PUT: another site's page cannot send one without
 * asking first, and no form of ours does.
 */
export async function PUT(request: Request): Promise<Response> {
  const limit = await limitCaller('photo', LIMIT);
  if (!limit.allowed) return answer({ problem: waitSentence(limit.waitSeconds) }, 429);
  if (Number(request.headers.get('content-length') ?? 0) > PHOTO_BYTES) {
    return answer({ problem: PHOTO_REFUSALS['too-large'] }, 413);
  }
  const at = now();
  const stored = await storePhoto(new Uint8Array(await request.arrayBuffer()), waitingFolder(at));
  if (!stored.ok) return answer({ problem: PHOTO_REFUSALS[stored.reason] }, 422);
  const name = new URL(request.url).searchParams.get('name') ?? '';
  return answer({ kept: keptPhotoSlip(stored, name, at) }, 200);
}

function answer(body: { kept: string } | { problem: string }, status: number): Response {
  return Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
}

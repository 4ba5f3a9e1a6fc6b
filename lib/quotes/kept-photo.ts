import { createHmac, timingSafeEqual } from 'node:crypto';
import { z } from 'zod';
import { authSecret } from '@/lib/config';
import type { NewPhoto } from '@/lib/jobs/write-photos';

/**
 * A photo that came with a form which could not be taken yet, or ahead of it. The file is stored; what ties it to the
 * form is a slip that the page carries and sends back: where the file is, until when it may be taken, and what it was
 * called, under a keyed hash, so that nobody can write one for somebody else's photo.
 */
const HOURS = 24;

const slip = z.object({
  fileKey: z.string(),
  thumbKey: z.string(),
  sha256: z.string(),
  width: z.number().int(),
  height: z.number().int(),
  until: z.number(),
});

/** Where photos of a day wait for their form: those that no form took are found there later and forgotten. */
export function waitingFolder(now: Date): string {
  return `asked/${now.toISOString().slice(0, 10)}`;
}

/** The slip of a stored photo, as one word of text: its facts, their hash, and the file's name to be read. */
export function keptPhotoSlip(photo: NewPhoto, name: string, now: Date): string {
  const { fileKey, thumbKey, sha256, width, height } = photo;
  const until = now.getTime() + HOURS * 3_600_000;
  const facts = Buffer.from(JSON.stringify({ fileKey, thumbKey, sha256, width, height, until })).toString(
    'base64url',
  );
  const shown = encodeURIComponent([...name].slice(0, 60).join('').toWellFormed());
  return `${facts}.${seal(facts, shown)}.${shown}`;
}

/** The photo of a slip; null for one that was changed, is too old or is none at all. */
export function photoOfSlip(text: string, now: Date): NewPhoto | null {
  const [facts = '', given = '', ...name] = text.split('.');
  const expected = Buffer.from(seal(facts, name.join('.')));
  const sent = Buffer.from(given);
  if (expected.length !== sent.length || !timingSafeEqual(expected, sent)) return null;
  const { until, ...photo } = slip.parse(JSON.parse(Buffer.from(facts, 'base64url').toString('utf8')));
  return until < now.getTime() ? null : photo;
}

function seal(facts: string, name: string): string {
  return createHmac('sha256', authSecret()).update(`kept-photo:${facts}:${name}`).digest('base64url');
}

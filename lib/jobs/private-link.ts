import { createHash, createHmac, randomBytes } from 'node:crypto';
import { authSecret, config } from '@/lib/config';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';

/**
 * The customer's way in without an account.
 *
 * The token is a keyed hash over the link's id and 192 random bits, and the database keeps only the token's own hash.
 * A stolen database opens no job without the app's secret; a mail that leaves later can still carry the address,
 * because the token is worked out again instead of being stored.
 */
const NONCE_BYTES = 24;
const TOKEN_SHAPE = /^[A-Za-z0-9_-]{43}$/;

export function linkToken(link: { id: string; nonce: string }): string {
  return createHmac('sha256', authSecret())
    .update(`private-link:${link.id}:${link.nonce}`)
    .digest('base64url');
}

export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/** Makes a new link to a job and returns its token. */
export async function createLink(tx: Tx, jobId: string, now: Date): Promise<string> {
  const id = randomBytes(16).toString('hex');
  const nonce = randomBytes(NONCE_BYTES).toString('base64url');
  const token = linkToken({ id, nonce });
  await tx.privateLink.create({ data: { id, jobId, nonce, tokenHash: hashToken(token), createdAt: now } });
  return token;
}

/** The job a token opens; null for anything else, a revoked link included. */
export async function findJobByToken(token: string): Promise<{ jobId: string; linkId: string } | null> {
  if (!TOKEN_SHAPE.test(token)) return null;
  const link = await db.privateLink.findUnique({
    where: { tokenHash: hashToken(token) },
    select: { id: true, jobId: true, revokedAt: true },
  });
  if (!link || link.revokedAt) return null;
  return { jobId: link.jobId, linkId: link.id };
}

/** The newest token of a job that still opens it, or null when all were revoked. */
export async function newestToken(client: Tx, jobId: string): Promise<string | null> {
  const link = await client.privateLink.findFirst({
    where: { jobId, revokedAt: null },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    select: { id: true, nonce: true },
  });
  return link ? linkToken(link) : null;
}

/** The same outside a transaction, for a page that leads on to the job. */
export function newestTokenOf(jobId: string): Promise<string | null> {
  return newestToken(db, jobId);
}

export function jobAddress(token: string): string {
  return `${config.appUrl}/job/${token}`;
}

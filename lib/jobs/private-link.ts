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

/** What a link opens. */
type Opens = { jobId: string } | { quoteId: string };

async function create(tx: Tx, opens: Opens, now: Date): Promise<string> {
  const id = randomBytes(16).toString('hex');
  const nonce = randomBytes(NONCE_BYTES).toString('base64url');
  const token = linkToken({ id, nonce });
  await tx.privateLink.create({
    data: { id, ...opens, nonce, tokenHash: hashToken(token), createdAt: now },
    select: { id: true },
  });
  return token;
}

async function find(token: string) {
  if (!TOKEN_SHAPE.test(token)) return null;
  const link = await db.privateLink.findUnique({
    where: { tokenHash: hashToken(token) },
    select: { id: true, jobId: true, quoteId: true, revokedAt: true },
  });
  return link && !link.revokedAt ? link : null;
}

async function newest(client: Tx, opens: Opens): Promise<string | null> {
  const link = await client.privateLink.findFirst({
    where: { ...opens, revokedAt: null },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    select: { id: true, nonce: true },
  });
  return link ? linkToken(link) : null;
}

/** Makes a new link to a job and returns its token. */
export function createLink(tx: Tx, jobId: string, now: Date): Promise<string> {
  return create(tx, { jobId }, now);
}

/** Makes a new link to a quote and returns its token. */
export function createQuoteLink(tx: Tx, quoteId: string, now: Date): Promise<string> {
  return create(tx, { quoteId }, now);
}

/** The job a token opens; null for anything else, a revoked link and a quote's link included. */
export async function findJobByToken(token: string): Promise<{ jobId: string; linkId: string } | null> {
  const link = await find(token);
  return link?.jobId ? { jobId: link.jobId, linkId: link.id } : null;
}

/** The quote a token opens; null for anything else, a revoked link and a job's link included. */
export async function findQuoteByToken(token: string): Promise<{ quoteId: string; linkId: string } | null> {
  const link = await find(token);
  return link?.quoteId ? { quoteId: link.quoteId, linkId: link.id } : null;
}

/** The newest token of a job that still opens it, or null when all were revoked. */
export function newestToken(client: Tx, jobId: string): Promise<string | null> {
  return newest(client, { jobId });
}

/** The newest token of a quote that still opens it, or null when all were revoked. */
export function newestQuoteToken(client: Tx, quoteId: string): Promise<string | null> {
  return newest(client, { quoteId });
}

/** The same outside a transaction, for a page that leads on to the job. */
export function newestTokenOf(jobId: string): Promise<string | null> {
  return newest(db, { jobId });
}

/** The same for the quote that a job came from. */
export function newestQuoteTokenOf(quoteId: string): Promise<string | null> {
  return newest(db, { quoteId });
}

export function jobAddress(token: string): string {
  return `${config.appUrl}/job/${token}`;
}

export function quoteAddress(token: string): string {
  return `${config.appUrl}/quote/${token}`;
}

import { createCipheriv, createDecipheriv, generateKeyPairSync, hkdfSync, randomBytes } from 'node:crypto';
import { authSecret } from '@/lib/config';
import { db } from '@/lib/db/client';
import { type Tx, transaction } from '@/lib/db/transaction';

/** The workshop's Ed25519 key that signs certificates. The private half is stored sealed under the app's secret. */
export type SigningKey = { id: string; privateKey: string; publicKey: string };

const CIPHER = 'aes-256-gcm';

function sealingKey(): Buffer {
  return Buffer.from(hkdfSync('sha256', authSecret(), '', 'mendpost certificate signing key', 32));
}

function seal(text: string): string {
  const iv = randomBytes(12);
  const cipher = createCipheriv(CIPHER, sealingKey(), iv);
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
  return Buffer.concat([iv, cipher.getAuthTag(), sealed]).toString('base64');
}

function unseal(text: string): string {
  const bytes = Buffer.from(text, 'base64');
  const decipher = createDecipheriv(CIPHER, sealingKey(), bytes.subarray(0, 12));
  decipher.setAuthTag(bytes.subarray(12, 28));
  return Buffer.concat([decipher.update(bytes.subarray(28)), decipher.final()]).toString('utf8');
}

/** The key in use, made on first need. */
export async function currentSigningKey(now: Date): Promise<SigningKey> {
  return (await newest(db)) ?? makeKey(now, true);
}

/** Retires the key in use and makes the next. Certificates signed with the old one still verify. */
export async function rotateSigningKey(now: Date): Promise<SigningKey> {
  return makeKey(now, false);
}

async function newest(client: Tx): Promise<SigningKey | null> {
  const row = await client.signingKey.findFirst({
    where: { retiredAt: null },
    orderBy: { createdAt: 'desc' },
  });
  return row ? { id: row.id, publicKey: row.publicKey, privateKey: unseal(row.privateKeySealed) } : null;
}

/**
 * Two processes may both need the first key at once: the table is locked, the first makes the key and the second,
 * when it gets the lock, finds it.
 */
async function makeKey(now: Date, isFirst: boolean): Promise<SigningKey> {
  return transaction(async (tx) => {
    await tx.$executeRaw`LOCK TABLE "signing_key" IN EXCLUSIVE MODE`;
    const found = isFirst ? await newest(tx) : null;
    if (found) return found;
    const id = `k${1 + (await tx.signingKey.count())}`;
    const pair = generateKeyPairSync('ed25519');
    const publicKey = pair.publicKey.export({ type: 'spki', format: 'pem' }).toString();
    const privateKey = pair.privateKey.export({ type: 'pkcs8', format: 'pem' }).toString();
    await tx.signingKey.updateMany({ where: { retiredAt: null }, data: { retiredAt: now } });
    await tx.signingKey.create({
      data: { id, publicKey, privateKeySealed: seal(privateKey), createdAt: now },
    });
    return { id, publicKey, privateKey };
  });
}

/** Public keys by id, retired ones included, for verifying and for the published list. */
export async function publicKeys(client: Tx = db) {
  return client.signingKey.findMany({
    select: { id: true, publicKey: true, createdAt: true, retiredAt: true },
    orderBy: { createdAt: 'asc' },
  });
}

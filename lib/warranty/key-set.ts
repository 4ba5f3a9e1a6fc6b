import { createPublicKey } from 'node:crypto';
import { publicKeys } from './signing-key';

export type PublishedKey = {
  kty: 'OKP';
  crv: 'Ed25519';
  use: 'sig';
  kid: string;
  x: string;
  /** ISO instants: since when it signs, and until when it did */
  since: string;
  until: string | null;
};

/** The workshop's public keys as a JWK set (RFC 7517; Ed25519 by RFC 8037), retired ones included. */
export async function keySet(): Promise<{ keys: PublishedKey[] }> {
  const rows = await publicKeys();
  return {
    keys: rows.map((row) => ({
      kty: 'OKP',
      crv: 'Ed25519',
      use: 'sig',
      kid: row.id,
      x: createPublicKey(row.publicKey).export({ format: 'jwk' }).x ?? '',
      since: row.createdAt.toISOString(),
      until: row.retiredAt?.toISOString() ?? null,
    })),
  };
}

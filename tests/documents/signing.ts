import type { CoverPayload } from '@/lib/documents/cover-attachment';
import type { SignedCertificate } from '@/lib/warranty/rules/signature-payload';
import { type PublicKeys, readPrivateKey, readPublicKey, signCertificate } from '@/lib/warranty/signature';

// RFC 8032 section 7.1, TEST 1: a published key pair, so that nothing secret stands in a test.
const hex = {
  d: '9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60',
  x: 'd75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a',
};
const keyId = 'k1';

function jwk(part: Partial<typeof hex>): string {
  const coded = Object.entries(part).map(([name, value]) => [
    name,
    Buffer.from(value, 'hex').toString('base64url'),
  ]);
  return JSON.stringify({ kty: 'OKP', crv: 'Ed25519', ...Object.fromEntries(coded) });
}

export const publicKeys: PublicKeys = new Map([[keyId, readPublicKey(jwk({ x: hex.x }))]]);

/** The facts of a certificate with their signed token. */
export function signedBy(facts: Omit<SignedCertificate, 'keyId'>): CoverPayload {
  const certificate = { keyId, ...facts };
  return { token: signCertificate(certificate, readPrivateKey(jwk(hex))), certificate };
}

import { createPrivateKey, createPublicKey, type KeyObject, sign, verify } from 'node:crypto';
import {
  bytesToSign,
  compareBytes,
  decodeCertificate,
  encodeCertificate,
  type SignedCertificate,
} from './rules/signature-payload';

/** Ed25519 signatures are always this long (RFC 8032 section 5.1.6). */
const SIGNATURE_BYTES = 64;
/** A certificate with dozens of lines stays far below; longer text is not even decoded. */
const LONGEST_TOKEN = 4000;

export type PublicKeys = ReadonlyMap<string, KeyObject>;

export type TokenReading =
  | { valid: true; certificate: SignedCertificate }
  | { valid: false; reason: 'format' | 'unknown-key' | 'signature' };

/**
 * Signs a certificate and returns the token for its QR: the compact bytes and the signature as one base64url text.
 * The same certificate and key always give the same token. `certificate.keyId` names the key, so that the
 * check finds its public half. Refuses a key that is not Ed25519.
 */
export function signCertificate(certificate: SignedCertificate, privateKey: KeyObject): string {
  const compact = encodeCertificate(certificate);
  const signature = sign(null, bytesToSign(compact), ed25519(privateKey));
  return Buffer.concat([compact, signature]).toString('base64url');
}

/**
 * Reads a token and says whether the workshop signed exactly this. Old keys stay in `publicKeys`, so that certificates
 * signed before a change of key still pass. Never throws on what a stranger typed.
 */
export function readToken(token: string, publicKeys: PublicKeys): TokenReading {
  const bytes = fromBase64url(token);
  if (bytes === null || bytes.length <= SIGNATURE_BYTES) return { valid: false, reason: 'format' };
  const compact = bytes.subarray(0, bytes.length - SIGNATURE_BYTES);
  const certificate = decodeCertificate(compact);
  if (certificate === null) return { valid: false, reason: 'format' };
  const publicKey = publicKeys.get(certificate.keyId);
  if (publicKey === undefined) return { valid: false, reason: 'unknown-key' };
  const signature = bytes.subarray(bytes.length - SIGNATURE_BYTES);
  if (!verify(null, bytesToSign(compact), publicKey, signature)) return { valid: false, reason: 'signature' };
  return { valid: true, certificate };
}

/** True when a token is genuine and says the same as a certificate on record, field by field. */
export function isSignatureOf(token: string, recorded: SignedCertificate, publicKeys: PublicKeys): boolean {
  const reading = readToken(token, publicKeys);
  return (
    reading.valid && compareBytes(encodeCertificate(reading.certificate), encodeCertificate(recorded)) === 0
  );
}

/** Reads a private Ed25519 key from PEM (PKCS 8) or from a JWK as JSON text; refuses every other kind of key. */
export function readPrivateKey(text: string): KeyObject {
  return ed25519(
    isJson(text) ? createPrivateKey({ key: JSON.parse(text), format: 'jwk' }) : createPrivateKey(text),
  );
}

/** Reads a public Ed25519 key from PEM (SPKI) or from a JWK as JSON text; refuses every other kind of key. */
export function readPublicKey(text: string): KeyObject {
  return ed25519(
    isJson(text) ? createPublicKey({ key: JSON.parse(text), format: 'jwk' }) : createPublicKey(text),
  );
}

/** Public keys by their ids, from text as stored: retired ones belong in here too. */
export function publicKeysFrom(stored: readonly { id: string; publicKey: string }[]): PublicKeys {
  return new Map(stored.map(({ id, publicKey }) => [id, readPublicKey(publicKey)]));
}

function ed25519(key: KeyObject): KeyObject {
  if (key.asymmetricKeyType !== 'ed25519')
    throw new RangeError(`An Ed25519 key is needed, not ${key.asymmetricKeyType ?? key.type}`);
  return key;
}

function isJson(text: string): boolean {
  return text.trimStart().startsWith('{');
}

// Node reads base64url leniently (padding, other alphabets, spare bits); only the one canonical spelling is accepted here.
function fromBase64url(text: string): Uint8Array | null {
  if (text.length > LONGEST_TOKEN) return null;
  const bytes = Buffer.from(text, 'base64url');
  return bytes.toString('base64url') === text ? bytes : null;
}

import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto';
import {
  bytesToSign,
  compareBytes,
  decodeCertificate,
  encodeCertificate,
  type SignedCertificate,
} from './rules/signature-payload';

/** Ed25519 signatures are always this long (RFC 8032 section 5.1.6). */
const SIGNATURE_BYTES = 64;
const KEY_ID_LENGTH = 8;
/** A certificate with dozens of lines stays far below; longer text is not even decoded. */
const LONGEST_TOKEN = 4000;

export type PublicKeys = ReadonlyMap<string, KeyObject>;

export type TokenReading =
  | { valid: true; certificate: SignedCertificate }
  | { valid: false; reason: 'format' | 'unknown-key' | 'signature' };

/**
 * Signs a certificate and returns the token for its QR: the compact bytes and the signature as one base64url text.
 * The same certificate and key always give the same token. Refuses a key whose id is not the certificate's.
 */
export function signCertificate(certificate: SignedCertificate, privateKey: KeyObject): string {
  if (keyIdOf(privateKey) !== certificate.keyId)
    throw new RangeError(`The certificate names another key than ${keyIdOf(privateKey)}`);
  const compact = encodeCertificate(certificate);
  const signature = sign(null, bytesToSign(compact), privateKey);
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

/**
 * A short name for a key: the first characters of its JWK thumbprint (RFC 7638; RFC 8037 appendix A.3 for Ed25519).
 * It only chooses the key to check with; it proves nothing by itself.
 */
export function keyIdOf(key: KeyObject): string {
  return thumbprint(key).slice(0, KEY_ID_LENGTH);
}

/** The whole JWK thumbprint of an Ed25519 key, SHA-256 in base64url. */
export function thumbprint(key: KeyObject): string {
  const { x } = publicOf(key).export({ format: 'jwk' });
  return createHash('sha256').update(`{"crv":"Ed25519","kty":"OKP","x":"${x}"}`).digest('base64url');
}

function publicOf(key: KeyObject): KeyObject {
  return key.type === 'public' ? key : createPublicKey(key);
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

/** The keys by their ids, as `readToken` wants them. */
export function publicKeysById(keys: readonly KeyObject[]): PublicKeys {
  return new Map(keys.map((key) => [keyIdOf(key), publicOf(key)]));
}

/** A new key pair as PEM text with its id; the private half is for the workshop's own keeping only. */
export function newSigningKey(): { keyId: string; privatePem: string; publicPem: string } {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519');
  return {
    keyId: keyIdOf(publicKey),
    privatePem: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    publicPem: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
  };
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

import { generateKeyPairSync, sign } from 'node:crypto';

/** A certificate for localhost that nobody else vouches for, good for a day from now, with its key; both as PEM. */
export function ownCertificate(): { key: string; cert: string } {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const hour = 3_600_000;
  // RFC 5280, section 4.1: version 3, serial, algorithm, issuer, validity, subject, key, and the name as an extension.
  const body = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))),
    der(0x02, Buffer.from([1])),
    ecdsaWithSha256,
    commonName,
    sequence(utcTime(Date.now() - hour), utcTime(Date.now() + 23 * hour)),
    commonName,
    publicKey.export({ type: 'spki', format: 'der' }),
    der(0xa3, sequence(sequence(oid('551d11'), der(0x04, sequence(der(0x82, Buffer.from('localhost'))))))),
  );
  const signature = sign('sha256', body, privateKey);
  const whole = sequence(body, ecdsaWithSha256, der(0x03, Buffer.from([0]), signature));
  const lines = whole.toString('base64').match(/.{1,64}/g) ?? [];
  return {
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${lines.join('\n')}\n-----END CERTIFICATE-----\n`,
  };
}

/** Tag, length and content (ITU-T X.690, 8.1). */
function der(tag: number, ...parts: Uint8Array[]): Buffer {
  const content = Buffer.concat(parts);
  const size = content.length;
  const length = size < 128 ? [size] : size < 256 ? [0x81, size] : [0x82, size >> 8, size & 255];
  return Buffer.concat([Buffer.from([tag, ...length]), content]);
}

function sequence(...parts: Uint8Array[]): Buffer {
  return der(0x30, ...parts);
}

function oid(hex: string): Buffer {
  return der(0x06, Buffer.from(hex, 'hex'));
}

function utcTime(instant: number): Buffer {
  const digits = new Date(instant).toISOString().replace(/\D/g, '').slice(2, 14);
  return der(0x17, Buffer.from(`${digits}Z`));
}

// RFC 5758, section 3.2, and the attribute 2.5.4.3 of X.520.
const ecdsaWithSha256 = sequence(oid('2a8648ce3d040302'));
const commonName = sequence(der(0x31, sequence(oid('550403'), der(0x0c, Buffer.from('localhost')))));

const BASE32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

/**
 * The address that an authenticator app reads from a QR code: six digits, thirty seconds, label "issuer:account".
 * The secret's UTF-8 bytes are written in Base32 (RFC 4648 section 6) without padding, as apps expect.
 *
 *     otpauthAddress({ issuer: 'Quay', account: 'a@example.org', secret: 'foobar' })
 *     → 'otpauth://totp/Quay:a%40example.org?secret=MZXW6YTBOI&issuer=Quay&digits=6&period=30'
 */
export function otpauthAddress(o: { issuer: string; account: string; secret: string }): string {
  const label = `${encodeURIComponent(o.issuer)}:${encodeURIComponent(o.account)}`;
  const issuer = encodeURIComponent(o.issuer);
  return `otpauth://totp/${label}?secret=${base32(o.secret)}&issuer=${issuer}&digits=6&period=30`;
}

/** The key alone, in groups of four, for typing where no camera is at hand. */
export function keyFromAddress(address: string): string {
  const key = new URL(address).searchParams.get('secret') ?? '';
  return (key.match(/.{1,4}/g) ?? []).join(' ');
}

function base32(text: string): string {
  const bits = [...new TextEncoder().encode(text)].map((byte) => byte.toString(2).padStart(8, '0')).join('');
  const fives = bits.match(/.{1,5}/g) ?? [];
  return fives.map((five) => BASE32.charAt(Number.parseInt(five.padEnd(5, '0'), 2))).join('');
}

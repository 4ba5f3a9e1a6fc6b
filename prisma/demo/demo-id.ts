import { createHash } from 'node:crypto';

/**
 * A fixed id for a row of the demonstration, made from its name so that loading twice gives the same ids: a UUID of the
 * custom kind (RFC 9562, version 8). demoId('repair', 'meridian-two/usb') is the same on every machine.
 */
export function demoId(kind: string, name: string): string {
  const hex = createHash('sha256').update(`quay-and-alder/${kind}/${name}`).digest('hex');
  const variant = ((Number.parseInt(hex.charAt(16), 16) & 0x3) | 0x8).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

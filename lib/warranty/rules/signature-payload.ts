import { addDays, type Day, day, daysBetween } from '@/lib/calendar/day';
import { isPeriod } from '@/lib/calendar/period';
import { foldSerial } from '@/lib/numbers/serial';
import { ByteReader, ByteWriter } from './signature-bytes';

export type SignedLine = { kind: 'work' | 'part'; term: string; startsOn: Day; endsOn: Day };

/** Everything a certificate's signature covers: change any of it and the signature fails. */
export type SignedCertificate = {
  keyId: string;
  number: string;
  revision: number;
  /** As typed or folded; the folded key is what is signed. */
  serial: string;
  issuedOn: Day;
  lines: SignedLine[];
};

const VERSION = 1;
const EPOCH = day('2000-01-01');
const KINDS = ['work', 'part'] as const;
// Signed in front of the payload, so that a signature made for something else can never pass for a certificate.
const PURPOSE = 'mendpost certificate 1\n';

/**
 * The compact bytes of a certificate, the same for the same facts whatever the order of the lines.
 * Version, key id, number, revision, folded serial, issue day, then each line's kind, term, start and days to its end.
 * Refuses days before 2000, a line that ends before it starts, a term that is no period, and a serial with nothing in it.
 * Example: one 12-month line on W4K7QX29D, revision 1, takes about 40 bytes.
 */
export function encodeCertificate(certificate: SignedCertificate): Uint8Array {
  const serial = foldSerial(certificate.serial);
  if (serial === '') throw new RangeError('A certificate without a serial cannot be signed');
  const lines = certificate.lines.map(encodeLine).sort(compareBytes);
  const writer = new ByteWriter();
  writer.byte(VERSION);
  writer.text(certificate.keyId);
  writer.text(certificate.number);
  writer.count(certificate.revision);
  writer.text(serial);
  writer.count(daysBetween(EPOCH, certificate.issuedOn));
  writer.count(lines.length);
  for (const line of lines) for (const value of line) writer.byte(value);
  return writer.done();
}

function encodeLine(line: SignedLine): Uint8Array {
  if (!isPeriod(line.term)) throw new RangeError(`Not a term: ${line.term}`);
  const writer = new ByteWriter();
  writer.byte(KINDS.indexOf(line.kind));
  writer.text(line.term);
  writer.count(daysBetween(EPOCH, line.startsOn));
  writer.count(daysBetween(line.startsOn, line.endsOn));
  return writer.done();
}

/**
 * Reads compact bytes back; null when they are not exactly what `encodeCertificate` writes, so that one certificate has
 * one form only. Example: the bytes of a certificate with one byte added give null.
 */
export function decodeCertificate(bytes: Uint8Array): SignedCertificate | null {
  try {
    const certificate = read(new ByteReader(bytes));
    return compareBytes(encodeCertificate(certificate), bytes) === 0 ? certificate : null;
  } catch (problem) {
    if (problem instanceof RangeError) return null;
    throw problem;
  }
}

function read(reader: ByteReader): SignedCertificate {
  if (reader.byte() !== VERSION) throw new RangeError('Not a version of certificate that is known here');
  const keyId = reader.text();
  const number = reader.text();
  const revision = reader.count();
  const serial = reader.text();
  const issuedOn = addDays(EPOCH, reader.count());
  const lines: SignedLine[] = [];
  for (let left = reader.count(); left > 0; left -= 1) lines.push(readLine(reader));
  return { keyId, number, revision, serial, issuedOn, lines };
}

function readLine(reader: ByteReader): SignedLine {
  const kind = KINDS[reader.byte()];
  if (kind === undefined) throw new RangeError('Not a kind of cover line');
  const term = reader.text();
  const startsOn = addDays(EPOCH, reader.count());
  return { kind, term, startsOn, endsOn: addDays(startsOn, reader.count()) };
}

/** The bytes that are signed: the purpose, then the compact bytes. */
export function bytesToSign(compact: Uint8Array): Uint8Array {
  const purpose = new TextEncoder().encode(PURPOSE);
  const whole = new Uint8Array(purpose.length + compact.length);
  whole.set(purpose, 0);
  whole.set(compact, purpose.length);
  return whole;
}

/** Below zero, zero or above, by the first byte that differs, then by length. */
export function compareBytes(a: Uint8Array, b: Uint8Array): number {
  const shared = Math.min(a.length, b.length);
  for (let i = 0; i < shared; i += 1) {
    const difference = (a[i] ?? 0) - (b[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

import { inflateSync } from 'node:zlib';
import { z } from 'zod';
import { isDay } from '@/lib/calendar/day';
import type { Sheet } from '@/lib/documents/kit/sheet';
import type { SignedCertificate } from '@/lib/warranty/rules/signature-payload';

/** What the certificate file carries for a checker without a connection: the signed token, and the same facts in the clear. */
export type CoverPayload = { token: string; certificate: SignedCertificate };

const fileName = 'cover.json';
const form = 'mendpost-cover-1';
const largestFile = 20_000_000;
const largestPayload = 200_000;

const dayText = z.string().refine(isDay);
const stored = z.object({
  form: z.literal(form),
  token: z.string(),
  certificate: z.object({
    keyId: z.string(),
    number: z.string(),
    revision: z.number().int(),
    serial: z.string(),
    issuedOn: dayText,
    lines: z.array(
      z.object({ kind: z.enum(['work', 'part']), term: z.string(), startsOn: dayText, endsOn: dayText }),
    ),
  }),
});

/** Attaches the payload to a certificate's file. */
export function attachCover(sheet: Sheet, payload: CoverPayload, made: Date): void {
  const { keyId, number, revision, serial, issuedOn, lines } = payload.certificate;
  const certificate = {
    keyId,
    number,
    revision,
    serial,
    issuedOn,
    lines: lines.map(({ kind, term, startsOn, endsOn }) => ({ kind, term, startsOn, endsOn })),
  };
  const text = JSON.stringify({ form, token: payload.token, certificate }, null, 1);
  sheet.attach(text, {
    name: fileName,
    type: 'application/json',
    description: 'The signed cover of this certificate',
    made,
  });
}

/** Objects of a file with a plain cross-reference table, which is the only kind that is written here. */
class PlainFile {
  private readonly text: string;
  private readonly offsets = new Map<number, number>();

  constructor(private readonly bytes: Uint8Array) {
    this.text = Buffer.from(bytes).toString('latin1');
    const start = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(this.text.slice(-64))?.[1];
    const table = this.text.slice(Number(start ?? Number.NaN));
    const head = /^xref\s+0 (\d+)\s+/.exec(table);
    if (!head) return;
    for (let index = 0; index < Number(head[1]); index += 1) {
      const entry = table.slice(head[0].length + index * 20, head[0].length + (index + 1) * 20);
      if (/^\d{10} \d{5} n/.test(entry)) this.offsets.set(index, Number(entry.slice(0, 10)));
    }
  }

  get trailer(): string {
    return this.text.slice(this.text.lastIndexOf('trailer'));
  }

  /** The dictionary text of an object, up to its stream. */
  dictionary(id: number): string {
    const from = this.offsets.get(id);
    if (from === undefined) return '';
    const whole = this.text.slice(from, this.text.indexOf('endobj', from));
    if (!whole.startsWith(`${id} 0 obj`)) return '';
    return whole.split('\nstream\n')[0] ?? '';
  }

  /** The bytes of an object's stream, unpacked. */
  stream(id: number): Uint8Array | null {
    const from = this.offsets.get(id);
    const dictionary = this.dictionary(id);
    const length = /\/Length (\d+)/.exec(dictionary)?.[1];
    if (from === undefined || length === undefined) return null;
    const start = from + dictionary.length + '\nstream\n'.length;
    const packed = this.bytes.subarray(start, start + Number(length));
    if (!dictionary.includes('/FlateDecode')) return packed;
    return inflateSync(packed, { maxOutputLength: largestPayload });
  }
}

function reference(dictionary: string, pattern: RegExp): number {
  return Number(pattern.exec(dictionary)?.[1] ?? Number.NaN);
}

function readAttachment(bytes: Uint8Array): string | null {
  const file = new PlainFile(bytes);
  const catalog = file.dictionary(reference(file.trailer, /\/Root (\d+) 0 R/));
  const names = file.dictionary(reference(catalog, /\/Names (\d+) 0 R/));
  const specification = file.dictionary(reference(names, /\(cover\.json\) (\d+) 0 R/));
  const stream = file.stream(reference(specification, /\/EF\s*<<\s*\/F (\d+) 0 R/));
  return stream ? Buffer.from(stream).toString('utf8') : null;
}

/**
 * Reads the cover that a certificate drawn here carries; null for any other file, and for one that another program has
 * saved in its own form. Says nothing about the signature: the token must still be verified, and only what the token
 * says counts, since the pages around it can be repainted by anyone.
 */
export function readCertificatePayload(bytes: Uint8Array): CoverPayload | null {
  if (bytes.length > largestFile) return null;
  try {
    const text = readAttachment(bytes);
    const read = stored.safeParse(text === null ? null : JSON.parse(text));
    return read.success ? { token: read.data.token, certificate: read.data.certificate } : null;
  } catch {
    // A stranger's file: bad JSON and a stream that cannot be unpacked mean the same, no cover of ours.
    return null;
  }
}

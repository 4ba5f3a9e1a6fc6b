/**
 * `npm run certificate:verify -- FILE [--keys KEYS]`: checks a certificate's file without asking the workshop.
 *
 * KEYS is a saved copy of the workshop's published keys (the address ends in /certificate/keys), certificate-keys.json
 * when not given. Only what the signed token says counts; the pages around it could be repainted by anyone.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { showNumber } from '@/lib/numbers/job-number';
import { publicKeysFrom, readToken } from '@/lib/warranty/signature';

const jwk = z.object({ kty: z.literal('OKP'), crv: z.literal('Ed25519'), kid: z.string(), x: z.string() });
const published = z.object({ keys: z.array(jwk) });

const { file, keys } = readArguments(process.argv.slice(2));
if (!file) {
  console.error('Say which file: npm run certificate:verify -- certificate.pdf --keys certificate-keys.json');
  process.exit(2);
}
process.exit(verify(file, keys) ? 0 : 1);

function verify(path: string, keysPath: string): boolean {
  const payload = readCertificatePayload(read(path));
  if (!payload) return say(false, 'This file carries no signed cover. It is not a certificate as issued.');
  const reading = readToken(payload.token, readKeys(keysPath));
  if (!reading.valid) {
    return say(
      false,
      reading.reason === 'unknown-key'
        ? 'It is signed with a key that is not in your copy of the published keys.'
        : 'The signature does not fit: something was changed.',
    );
  }
  const { certificate } = reading;
  const lines = certificate.lines.map(
    (line) => `  ${line.kind} ${line.term}: ${line.startsOn} to the end of ${line.endsOn}`,
  );
  const facts = [
    `Certificate ${showNumber(certificate.number)}, revision ${certificate.revision}, issued ${certificate.issuedOn}`,
    `Serial ${certificate.serial} (without separators), key ${certificate.keyId}`,
    ...lines,
  ];
  const isSame = JSON.stringify(payload.certificate) === JSON.stringify(certificate);
  if (!isSame)
    return say(false, 'The file states other facts than those that were signed. Signed was:', ...facts);
  return say(true, 'Genuine: signed by the workshop whose keys you gave.', ...facts);
}

function readKeys(path: string) {
  const { keys: list } = published.parse(JSON.parse(read(path).toString('utf8')));
  return publicKeysFrom(list.map((key) => ({ id: key.kid, publicKey: JSON.stringify(key) })));
}

function read(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    console.error(`There is no file ${path}.`);
    process.exit(2);
  }
}

function readArguments(args: readonly string[]): { file: string | undefined; keys: string } {
  const at = args.indexOf('--keys');
  const named = at === -1 ? undefined : args[at + 1];
  return {
    file: args.find((arg, index) => !arg.startsWith('--') && index !== at + 1),
    keys: named ?? 'certificate-keys.json',
  };
}

function say(isGenuine: boolean, ...lines: string[]): boolean {
  const print = isGenuine ? console.log : console.error;
  for (const line of lines) print(line);
  return isGenuine;
}

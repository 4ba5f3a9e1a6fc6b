import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';
import { verifyPassword as verifyByLibrary } from 'better-auth/crypto';
import { PASSWORD_COST } from './password-cost';

const { logN, r, p } = PASSWORD_COST;
const COST = { N: 2 ** logN, r, p };
const ROOM = { maxmem: 64 * 1024 * 1024 };
const HEAD = `$scrypt$ln=${logN},r=${r},p=${p}$`;
const BYTES = 32;

/** A password as it is kept, in the PHC string format: `$scrypt$ln=14,r=8,p=5$salt$hash`, a salt of 128 bits. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  const key = await derive(password, salt);
  return `${HEAD}${salt.toString('base64url')}$${key.toString('base64url')}`;
}

/** Whether a password fits what is kept of it; also of one kept by an earlier version, as the auth library hashed it. */
export async function verifyPassword({
  hash,
  password,
}: {
  hash: string;
  password: string;
}): Promise<boolean> {
  if (!isHashedAsNow(hash)) return verifyByLibrary({ hash, password });
  const [salt = '', kept = ''] = hash.slice(HEAD.length).split('$');
  const expected = Buffer.from(kept, 'base64url');
  const key = await derive(password, Buffer.from(salt, 'base64url'));
  return expected.length === BYTES && timingSafeEqual(expected, key);
}

/** False for a password that is to be hashed again as soon as somebody types it. */
export function isHashedAsNow(hash: string): boolean {
  return hash.startsWith(HEAD);
}

// One person's keyboard may write a letter with its accent as one character, another's as two.
function derive(password: string, salt: Buffer): Promise<Buffer> {
  const options: ScryptOptions = { ...COST, ...ROOM };
  return new Promise((resolve, reject) => {
    scrypt(password.normalize('NFKC'), salt, BYTES, options, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });
}

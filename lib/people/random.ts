import { randomInt } from 'node:crypto';
import { drawPassword } from './rules/passwords';

/** A password to hand over on paper, from the operating system's source of chance. */
export function newPassword(): string {
  return drawPassword((n) => randomInt(n));
}

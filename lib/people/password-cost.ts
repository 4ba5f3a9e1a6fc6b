/**
 * What one try of a password costs: one of the settings that the OWASP Password Storage Cheat Sheet calls equal (scrypt:
 * N = 2^14, r = 8, p = 5). It takes 16 MiB, where N = 2^17 with p = 1 would take 128 MiB of a small machine for each of
 * several sign-ins at once.
 */
export const PASSWORD_COST = { logN: 14, r: 8, p: 5 } as const;

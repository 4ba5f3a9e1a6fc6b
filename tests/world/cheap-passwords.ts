import { vi } from 'vitest';

// A try takes a quarter of a second by design, and tests sign in hundreds of times. tests/people/password-hash.alone.test.ts
// takes this back, and checks what is really kept.
vi.mock('@/lib/people/password-cost', () => ({ PASSWORD_COST: { logN: 4, r: 8, p: 1 } }));

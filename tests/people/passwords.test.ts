import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawPassword, PASSWORD_MIN, passwordProblem } from '@/lib/people/rules/passwords';

const PERSONAL = ['Mira Holt', 'mira.holt@example.org', 'Quay & Alder'];

// OWASP ASVS 5.0.0 (2025): 6.2.1 length, 6.2.5 no composition rules, 6.2.9 at least 64 characters allowed,
// 6.2.11 words of the context refused.
test.each([
  ['eleven characters', 'abcdefghijk', 'short'],
  ['129 characters', 'abcdefghij'.repeat(13).slice(0, 129), 'long'],
  ['one character over and over', 'aaaaaaaaaaaaaaaa', 'repeating'],
  ['four characters over and over', 'abcdabcdabcdabcd', 'repeating'],
  ['the person’s name with a year', 'Mira.Holt.2026', 'personal'],
  ['the workshop’s name', 'quay-and-alder-1', 'personal'],
  ['the first name three times', 'mira mira mira', 'personal'],
  ['the part before the @', 'mira.holt!!12', 'personal'],
])('%s is refused', (_name, password, problem) => {
  expect(passwordProblem(password, PERSONAL)).toBe(problem);
});

test.each([
  ['lower case words alone', 'lantern ferry solder'],
  ['digits alone', '829104736150'],
  ['letters of any script', 'морской-фонарь-42'],
  ['64 characters', 'lantern ferry solder '.repeat(4).slice(0, 64)],
  ['a name among enough other words', 'mira holt eats seven pears'],
])('%s is accepted', (_name, password) => {
  expect(passwordProblem(password, PERSONAL)).toBeNull();
});

test('an empty name makes no password personal', () => {
  expect(passwordProblem('lantern ferry', ['', '@', 'ab'])).toBeNull();
});

test('a drawn password passes its own test, has four groups of five and none of 0 O 1 I L', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(), { minLength: 20, maxLength: 20 }), (chances) => {
      let at = 0;
      const password = drawPassword((n) => (chances[at++] ?? 0) % n);
      expect(password).toMatch(/^([a-hjkmnp-z2-9]{5}-){3}[a-hjkmnp-z2-9]{5}$/);
      expect(password.length).toBeGreaterThanOrEqual(PASSWORD_MIN);
    }),
  );
});

test('every drawn character depends on chance alone', () => {
  const first = drawPassword(() => 0);
  const last = drawPassword((n) => n - 1);
  expect(first).toBe('aaaaa-aaaaa-aaaaa-aaaaa');
  expect(last).toBe('99999-99999-99999-99999');
});

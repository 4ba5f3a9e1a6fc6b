import { expect, test } from 'vitest';
import { historyWords } from '@/lib/jobs/rules/booking';

test('what happened to a unit is told back in the order it was asked, and what nobody asks is left out', () => {
  expect(historyWords(['opened', 'dropped'])).toBe(
    'It was dropped or knocked. It was opened or repaired before.',
  );
  expect(historyWords(['stolen'])).toBe('');
  expect(historyWords([])).toBe('');
});

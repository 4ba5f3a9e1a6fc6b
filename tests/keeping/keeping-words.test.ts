import { expect, it } from 'vitest';
import { keepingWords } from '@/lib/keeping/rules/keeping-words';

it('names the months after which people’s data goes, and says where it stays until they ask', () => {
  expect(keepingWords(84).join(' ')).toMatch(
    / 6 months after the last word .* 84 months after it was closed/,
  );
  expect(keepingWords(0).join(' ')).toContain('until you ask us to remove it');
  expect(keepingWords(0).join(' ')).not.toMatch(/\b0 months/);
});

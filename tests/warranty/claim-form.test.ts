import { expect, test } from 'vitest';
import { askForm } from '@/app/(front)/certificate/[number]/schema';
import { symptomWords } from '@/lib/warranty/rules/standing';

test('a claim about something else needs words, and one about a fault on the list does not', () => {
  const asked = (symptom: string, details: string) =>
    askForm.safeParse({ serial: 'QF-104', symptom, details });
  expect(asked('Does not charge', '').success).toBe(true);
  expect(asked('other', 'It hums.').success).toBe(true);
  const empty = asked('other', ' ');
  expect(empty.error?.issues.map(({ path }) => path)).toEqual([['details']]);
});

test('no customer reads the word it is kept under', () => {
  expect(symptomWords('other')).toBe('Something else');
  expect(symptomWords('Does not charge')).toBe('Does not charge');
});

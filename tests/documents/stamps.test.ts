import { expect, test } from 'vitest';
import type { Stamp } from '@/lib/documents/kit/stamps';
import { drawReceipt } from '@/lib/documents/receipt';
import { receipt } from '@/tests/documents/demo';
import { stamp } from '@/tests/documents/demo/shared';
import { lettersOf, textOf } from '@/tests/documents/read-pdf';

const said = async (stamps: readonly Stamp[]) =>
  lettersOf(textOf(await drawReceipt({ ...receipt, stamps: [...stamps] })));

test('a stage that was passed over is not needed, and never to come', async () => {
  const text = await said([
    stamp('Booked', '2026-12-03'),
    { label: 'On the bench', day: null, state: 'skipped' },
    { label: 'Ready', day: null, state: 'now' },
    stamp('Sent back', null),
  ]);
  expect(text).toContain(lettersOf('On the bench not needed'));
  expect(text).toContain(lettersOf('Ready here now'));
  expect(text).toContain(lettersOf('Sent back to come'));
});

test('a stage without a day is told by how it stands, one that ended the run too', async () => {
  const text = await said([
    { label: 'Price asked', day: null, state: 'done' },
    { label: 'Declined', day: null, state: 'stopped' },
  ]);
  expect(text).toContain(lettersOf('Price asked done'));
  expect(text).toContain(lettersOf('Declined stopped'));
  expect(text).not.toContain(lettersOf('to come'));
});

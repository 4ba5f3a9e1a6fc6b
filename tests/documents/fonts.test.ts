import { expect, test } from 'vitest';
import { drawReceipt } from '@/lib/documents/receipt';
import { receipt } from '@/tests/documents/demo';
import { textOf } from '@/tests/documents/read-pdf';

// In a file of its own: the order of drawing in the process is the subject.
test('a document reads the same whatever was drawn before it in the process', async () => {
  await drawReceipt({ ...receipt, customer: 'Ö Ő É Ş Ñ Å Ž fi ﬁ µ μ' });
  const plainName = { ...receipt, customer: 'OLIVE ESNAZ fi' };
  const after = await drawReceipt(plainName);
  expect(textOf(after)).toContain('OLIVE ESNAZ fi');
  await drawReceipt({ ...receipt, customer: 'Łódź Ô Ê Ŝ' });
  expect(Buffer.compare(await drawReceipt(plainName), after)).toBe(0);
});

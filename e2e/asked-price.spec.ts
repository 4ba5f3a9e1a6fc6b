import { agreeAndBook } from './asked-price/agree';
import { askAndAnswer } from './asked-price/ask';
import { invoicePayAndCredit } from './asked-price/pay';
import { approveAndDecline } from './asked-price/repair';
import { customer } from './world/people';
import { test } from './world/test';

// The clock is asked for so that it returns to the opening time afterwards.
test('a price is asked for, agreed, changed twice, invoiced, paid and partly given back', async ({
  page,
  workshop,
  setClock: _,
}, { project }) => {
  // Some fifty pages one after the other.
  test.setTimeout(300_000);
  const who = customer(`asks-${project.name}`);
  const people = { who, page, bench: await workshop('bench'), front: await workshop('front') };
  const asked = await askAndAnswer(people);
  const booked = await agreeAndBook(people, asked);
  await approveAndDecline(people, booked);
  await invoicePayAndCredit(people, booked);
});

import { takeInTheParcels } from './bench-day/arrive';
import { lookAtWhatIsLeft } from './bench-day/evening';
import { workAtTheBench } from './bench-day/repair';
import { sendBackAndDecide } from './bench-day/send-back';
import { customer } from './world/people';
import { expect, test } from './world/test';

test('a day of the workshop: ten jobs arrive, are repaired, go back or wait for somebody', async ({
  page,
  workshop,
  setClock,
}) => {
  // Some hundred and fifty pages one after the other.
  test.setTimeout(480_000);
  const people = {
    who: customer('bench-day'),
    page,
    frontPhone: await workshop('front', 'phone'),
    front: await workshop('front'),
    benchPhone: await workshop('bench', 'phone'),
    bench: await workshop('bench'),
    owner: await workshop('owner'),
  };
  const morning = await takeInTheParcels(people);
  setClock('2026-12-01T11:00:00.000Z');
  const bench = await workAtTheBench(people, () => setClock('2026-12-01T12:00:00.000Z'));
  setClock('2026-12-01T15:30:00.000Z');
  const afternoon = await sendBackAndDecide(people);
  await lookAtWhatIsLeft(people, { ...morning, ...bench, ...afternoon });
  for (const phone of [people.frontPhone, people.benchPhone]) {
    const wider = await phone.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wider, 'nothing sticks out of the phone').toBeLessThanOrEqual(0);
  }
});

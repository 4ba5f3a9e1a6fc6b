import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { OtherAddressNotice } from '@/app/workshop/(inside)/arrivals/opened-notice';

it('shows both addresses of an opened job and a booking that is not of its customer, each with the way to put it right', () => {
  const html = renderToStaticMarkup(
    <OtherAddressNotice
      opened={{
        number: 'J7WFVR7NT',
        version: 2,
        arrivedSerial: 'HW2-90001-A',
        accessories: [],
        unit: 'Halyard Two',
        customer: 'Perran Veale',
        email: 'perran.veale@example.org',
        why: null,
      }}
      booking={{ number: 'JRZT23RSM', customer: { email: 'maren.holt@example.org' } }}
    />,
  );
  const text = html.replace(/<[^>]+>/g, '').replace(/\s+/g, ' ');
  expect(text).toContain('opened for the parcel: perran.veale@example.org');
  expect(text).toContain('this booking: maren.holt@example.org');
  expect(html).toContain('href="/workshop/customers/J7WFVR7NT/contact"');
  expect(html).toContain('href="/workshop/customers/JRZT23RSM/contact"');
  expect(html).toContain('href="/workshop/arrivals?opened=J7WFVR7NT"');
});

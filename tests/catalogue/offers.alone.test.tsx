import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import { FamilyFilter } from '@/app/(front)/prices/family-filter';
import { JsonLd } from '@/app/(front)/prices/json-ld';
import { serviceOf } from '@/app/(front)/prices/offers';
import { PriceLines } from '@/app/(front)/prices/price-lines';
import { type PricePage, readPricePage } from '@/lib/catalogue/price-list';
import { transaction } from '@/lib/db/transaction';
import { blankWorkshop } from '@/lib/workshop/card';
import { DEMO_REPAIRS, loadCatalogue } from '@/prisma/demo/catalogue';
import { resetDatabase, useDatabase } from '@/tests/database';

vi.mock('next/headers', () => ({ headers: async () => new Headers({ 'x-nonce': 'nonce' }) }));

const appUrl = 'https://repairs.example.org';
const workshop = { ...blankWorkshop, name: 'Quay & Alder', territory: 'the United Kingdom' };
let list: PricePage;

useDatabase();
beforeAll(async () => {
  await resetDatabase();
  await transaction((tx) => loadCatalogue(tx, new Date('2026-11-25T09:00:00Z')));
  list = await readPricePage({ search: '', kind: undefined, page: 1, pricesIncludeTax: true });
}, 60_000);
const models = () => list.families.flatMap((family) => family.models);

// schema.org, Offer: price "use '.' rather than ',' to indicate a decimal point" and no currency sign; priceCurrency in
// ISO 4217 (from memory). The properties agree with the types of schema-dts 2.1.0, made from schema.org's own vocabulary.
const offer = z.strictObject({
  '@type': z.literal('Offer'),
  name: z.string().min(1),
  description: z.string().min(1),
  price: z.string().regex(/^\d+\.\d{2}$/),
  priceCurrency: z.literal('GBP'),
  priceSpecification: z.strictObject({
    '@type': z.literal('PriceSpecification'),
    price: z.string(),
    priceCurrency: z.literal('GBP'),
    valueAddedTaxIncluded: z.literal(true),
  }),
  url: z.url({ protocol: /^https$/ }),
});
const service = z.strictObject({
  '@type': z.literal('Service'),
  serviceType: z.string().min(1),
  name: z.string().min(1),
  url: z.url(),
  provider: z.looseObject({ '@type': z.literal('LocalBusiness'), name: z.literal('Quay & Alder') }),
  areaServed: z.string().optional(),
  offers: z.array(offer).min(1),
});

describe('what search engines are told', () => {
  test('is a Service with an Offer for each repair: price, currency, and an address that leads to it', () => {
    const services = models().map((model) => service.parse(serviceOf(model, workshop, appUrl)));
    const offers = services.flatMap((each) => each.offers);
    expect(offers).toHaveLength(DEMO_REPAIRS.length);
    const gull = services.find((each) => each.name === 'Repair of Tideline Gull');
    expect(gull?.url).toBe('https://repairs.example.org/prices/tideline-gull');
    expect(gull?.offers.find((each) => each.name === 'Micro-USB socket replaced')).toMatchObject({
      price: '58.00',
      url: 'https://repairs.example.org/prices/tideline-gull#usb-socket',
    });
    for (const each of offers) expect(each.priceSpecification.price).toBe(each.price);
  });

  test('is written so that no text of the catalogue can end the element or be read as markup', async () => {
    const html = renderToStaticMarkup(await JsonLd({ data: { name: '</script><b>&amp; "it"' } }));
    expect(html.match(/<\/script>/g)).toHaveLength(1);
    expect(html).not.toContain('<b>');
    const json = /^<script[^>]*type="application\/ld\+json"[^>]*>(.*)<\/script>$/.exec(html)?.[1] ?? '';
    expect(JSON.parse(json)).toEqual({ '@context': 'https://schema.org', name: '</script><b>&amp; "it"' });
  });
});

describe('the price list', () => {
  test('leads from each line to the repair’s own place on the model’s page', () => {
    for (const model of models()) {
      const html = renderToStaticMarkup(<PriceLines model={model} money={String} />);
      for (const repair of model.repairs) {
        expect(html).toContain(`href="/prices/${model.slug}#${repair.slug}"`);
        expect(repair.slug).toMatch(/^[a-z0-9-]+$/);
      }
    }
  });

  test('can be narrowed to one kind of device, and keeps what was searched for', () => {
    const html = renderToStaticMarkup(
      <FamilyFilter kinds={list.kinds} chosen="groove-boxes" typed="usb & more" />,
    );
    expect(html).toContain('href="/prices?q=usb+%26+more&amp;family=field-recorders"');
    expect(html).toContain('<strong aria-current="page">Groove boxes (10)</strong>');
    expect(html).toContain('href="/prices?q=usb+%26+more"');
    expect(renderToStaticMarkup(<FamilyFilter kinds={list.kinds.slice(0, 1)} chosen={null} typed="" />)).toBe(
      '',
    );
  });
});

import type { ListedModel, ListedRepair } from '@/lib/catalogue/price-list';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { decimalText } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/card';

/**
 * A model's repairs as a schema.org Service with one Offer each, prices with tax. An offer's address is its place on the model's
 * page: that of a booking would begin one for every robot that follows it.
 */
export function serviceOf(
  model: Pick<ListedModel, 'slug' | 'maker' | 'name'> & { repairs: readonly ListedRepair[] },
  workshop: WorkshopCard,
  appUrl: string,
): Record<string, unknown> {
  return {
    '@type': 'Service',
    serviceType: 'Electronics repair',
    name: `Repair of ${unitName(model)}`,
    url: `${appUrl}/prices/${model.slug}`,
    provider: providerOf(workshop),
    ...(workshop.territory ? { areaServed: workshop.territory } : {}),
    offers: model.repairs.map((repair) => ({
      '@type': 'Offer',
      name: repair.name,
      description: repair.summary,
      price: decimalText(repair.grossMinor, workshop.currency),
      priceCurrency: workshop.currency,
      priceSpecification: {
        '@type': 'PriceSpecification',
        price: decimalText(repair.grossMinor, workshop.currency),
        priceCurrency: workshop.currency,
        valueAddedTaxIncluded: true,
      },
      url: `${appUrl}/prices/${model.slug}#${repair.slug}`,
    })),
  };
}

function providerOf(workshop: WorkshopCard): Record<string, unknown> {
  return {
    '@type': 'LocalBusiness',
    name: workshop.name,
    ...(workshop.email ? { email: workshop.email } : {}),
    ...(workshop.phone ? { telephone: workshop.phone } : {}),
    address: {
      '@type': 'PostalAddress',
      streetAddress: workshop.addressLines.join(', '),
      postalCode: workshop.postcode,
      addressLocality: workshop.town,
      addressCountry: workshop.country,
    },
  };
}

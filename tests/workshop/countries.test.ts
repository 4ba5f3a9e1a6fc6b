import { expect, it } from 'vitest';
import { countryChoices } from '@/lib/workshop/places';

// The names are those of Unicode's CLDR, as Node brings them; the codes those of ISO 3166-1.
it('customers choose among the same countries as the workshop, its own first', () => {
  const [all, own] = [countryChoices('en-GB'), countryChoices('en-GB', 'GB')];
  expect(own[0]).toEqual({ value: 'GB', label: 'United Kingdom' });
  expect(own.slice(1)).toEqual(all.filter(({ value }) => value !== 'GB'));
  expect(all[0]?.label).toBe('Afghanistan');
  expect(all).toHaveLength(249);
  expect(countryChoices('de-DE', 'DE')[0]?.label).toBe('Germany');
});

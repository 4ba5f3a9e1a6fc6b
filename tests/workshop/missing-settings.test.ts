import { describe, expect, it } from 'vitest';
import { blankWorkshop } from '@/lib/workshop/card';
import {
  missingSettings,
  missingWords,
  type Stopped,
  type ToldSettings,
  takesBookings,
} from '@/lib/workshop/rules/missing-settings';
import { DEMO_WORKSHOP } from '@/prisma/demo/workshop';

const keys = (over: Partial<ToldSettings>, stopped?: Stopped) =>
  missingSettings({ ...DEMO_WORKSHOP, ...over }, stopped).map(({ key }) => key);

describe('what of the settings is missing', () => {
  it('is nothing where all of it is told, and everything before the first save', () => {
    expect(missingSettings(DEMO_WORKSHOP)).toEqual([]);
    expect(takesBookings(DEMO_WORKSHOP)).toBe(true);
    expect(missingSettings(blankWorkshop).map(({ key }) => key)).toEqual([
      'name',
      'addressLines',
      'town',
      'email',
      'territory',
    ]);
    expect(takesBookings(blankWorkshop)).toBe(false);
  });

  it.each<[string, Partial<ToldSettings>, string, Stopped[]]>([
    ['the name the program gave', { name: 'Your workshop' }, 'name', ['booking', 'certificate']],
    ['no address', { addressLines: [] }, 'addressLines', ['booking', 'certificate']],
    ['an address of blanks', { addressLines: ['  '] }, 'addressLines', ['booking', 'certificate']],
    ['no town', { town: ' ' }, 'town', ['booking']],
    ['no mail', { email: '' }, 'email', ['booking', 'certificate']],
    ['nowhere where certificates hold', { territory: '' }, 'territory', ['certificate']],
  ])('%s stops what it has to', (_, over, key, stops) => {
    expect(keys(over)).toEqual([key]);
    const stopped = (['booking', 'certificate'] as const).filter((what) => keys(over, what).length > 0);
    expect(stopped).toEqual(stops);
  });

  it('misses no postcode, which some countries do not have', () => {
    expect(missingSettings({ ...DEMO_WORKSHOP, ...{ postcode: '' } })).toEqual([]);
  });

  it('is said in one sentence', () => {
    const told = { ...DEMO_WORKSHOP, town: '', email: '', territory: '' };
    expect(missingWords(missingSettings(told))).toBe(
      'the town, the address for customers’ mail and where certificates hold good',
    );
    expect(missingWords(missingSettings({ ...DEMO_WORKSHOP, town: '' }))).toBe('the town');
  });
});

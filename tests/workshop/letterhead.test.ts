import { expect, test } from 'vitest';
import { letterheadOf, postalLines } from '@/lib/workshop/rules/letterhead';

const address = { addressLines: ['12 Chandler Row', ''], town: 'Sandmouth', postcode: 'QM4 7QY' };

test('an address is set in the lines of a label, the country last where it is written', () => {
  expect(postalLines(address)).toEqual(['12 Chandler Row', 'Sandmouth', 'QM4 7QY']);
  expect(postalLines(address, 'United Kingdom').at(-1)).toBe('United Kingdom');
  expect(postalLines({ addressLines: [], town: '', postcode: ' ' })).toEqual([]);
});

test('a letterhead leaves out what is not known', () => {
  const card = { ...address, name: 'Quay & Alder', phone: '', email: 'bench@quayandalder.example.org' };
  expect(letterheadOf(card)).toEqual({
    name: 'Quay & Alder',
    address: ['12 Chandler Row', 'Sandmouth', 'QM4 7QY'],
    phone: null,
    email: 'bench@quayandalder.example.org',
  });
});

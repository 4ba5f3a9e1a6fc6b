import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldText, isOneTypo, rankEntries, type SearchEntry } from '@/lib/catalogue/rules/search';

const entry = (id: string, model: string, repair: string): SearchEntry => ({
  id,
  fields: [
    { text: model, weight: 3 },
    { text: repair, weight: 2 },
  ],
});

const list = [
  entry('usb', 'Ostrel Tern field recorder', 'USB socket replaced'),
  entry('jack', 'Ostrel Tern field recorder', 'Headphone jack replaced'),
  entry('pads', 'Skerrin GB-8 groove box', 'Pads renewed'),
  entry('keys', 'Väsby Keel keyboard controller', 'Key contacts renewed'),
];
const found = (typed: string) => rankEntries(typed, list).map((hit) => hit.id);

test.each([
  ['GB·8', 'gb 8'],
  ['  Väsby—Keel ', 'vasby keel'],
  ['Ⅷ pads', 'viii pads'],
  ['', ''],
])('"%s" is folded to "%s"', (text, folded) => {
  expect(foldText(text)).toBe(folded);
});

describe('the search', () => {
  test.each([
    { name: 'a whole word', typed: 'pads', ids: ['pads'] },
    { name: 'the beginning of a word', typed: 'groo', ids: ['pads'] },
    { name: 'without accents', typed: 'vasby', ids: ['keys'] },
    { name: 'in capitals', typed: 'USB', ids: ['usb'] },
    { name: 'run together', typed: 'gb8', ids: ['pads'] },
    { name: 'written apart', typed: 'gb 8', ids: ['pads'] },
    { name: 'a letter missing', typed: 'recoder usb', ids: ['usb'] },
    { name: 'a letter too many', typed: 'skerrrin', ids: ['pads'] },
    { name: 'a letter wrong', typed: 'keybourd', ids: ['keys'] },
    { name: 'two letters swapped', typed: 'haedphone', ids: ['jack'] },
    { name: 'a typo and an unfinished word', typed: 'recrod', ids: ['usb', 'jack'] },
    { name: 'small words around it', typed: 'can you please fix the usb of my tern', ids: ['usb'] },
    { name: 'two typos', typed: 'keebourd', ids: [] },
    { name: 'a typo in a short word', typed: 'usp', ids: [] },
    { name: 'nothing typed', typed: '  ', ids: [] },
    { name: 'only signs', typed: '%_\'"\\', ids: [] },
  ])('$name', ({ typed, ids }) => {
    expect(found(typed)).toEqual(ids);
  });

  test('entries with every word come alone', () => {
    expect(found('tern jack')).toEqual(['jack']);
  });

  test('without one, entries with half of the words are given', () => {
    expect(found('tern zither')).toEqual(['usb', 'jack']);
    expect(found('tern zither harp')).toEqual([]);
  });

  test('a whole word counts more than the inside of one', () => {
    const entries = [entry('inside', 'Backkeys', ''), entry('whole', 'Keys', '')];
    expect(rankEntries('keys', entries).map((hit) => hit.id)).toEqual(['whole', 'inside']);
  });

  test('whatever is typed, it answers with entries of the list and never twice', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (typed) => {
        const ids = found(typed);
        expect(new Set(ids).size).toBe(ids.length);
        for (const id of ids) expect(list.some((each) => each.id === id)).toBe(true);
      }),
    );
  });
});

describe('one typo', () => {
  const letter = fc.constantFrom(...'abcdefgh');
  const word = fc.array(letter, { minLength: 4, maxLength: 10 }).map((letters) => letters.join(''));

  test('is any letter left out, added or replaced, and any two neighbours swapped', () => {
    fc.assert(
      fc.property(word, letter, fc.nat(), (text, other, n) => {
        const at = n % text.length;
        const [before, after] = [text.slice(0, at), text.slice(at + 1)];
        const swapped = `${before}${after.slice(0, 1)}${text[at]}${after.slice(1)}`;
        for (const typed of [
          before + after,
          before + other + text.slice(at),
          before + other + after,
          swapped,
        ]) {
          expect(isOneTypo(typed, text)).toBe(true);
        }
      }),
    );
  });

  test.each([
    ['abcd', 'abdc', true],
    ['abcd', 'badc', false],
    ['abcd', 'abef', false],
    ['recroder', 'recorders', true],
    ['abcdef', 'abc', false],
  ])('%s for %s: %s', (typed, word, expected) => {
    expect(isOneTypo(typed, word)).toBe(expected);
  });
});

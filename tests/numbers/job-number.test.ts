import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCharacter, hasValidCheck } from '@/lib/numbers/iso7064';
import {
  drawNumber,
  explainReading,
  NUMBER_ALPHABET,
  type NumberFault,
  type NumberKind,
  readNumber,
  showNumber,
} from '@/lib/numbers/job-number';

const kinds = ['J', 'Q', 'W', 'C'] as const;
const ALL = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** A number drawn from random draws that fast-check chooses and can shrink. */
const number = fc
  .tuple(fc.constantFrom<NumberKind[]>(...kinds), fc.infiniteStream(fc.nat({ max: 31 })))
  .map(([kind, draws]) => drawNumber(kind, () => draws.next().value ?? 0));

const swapped = (text: string, i: number, j: number) => {
  const characters = [...text];
  [characters[i], characters[j]] = [characters[j] ?? '', characters[i] ?? ''];
  return characters.join('');
};

describe('drawing a number', () => {
  test('it has its kind letter, seven characters and a check character, all of the alphabet', () => {
    fc.assert(
      fc.property(number, (drawn) => {
        expect(drawn).toMatch(/^[JQWC][0-9A-HJKMNP-TV-Z]{8}$/);
        expect(drawn.slice(-1)).toBe(checkCharacter('mod-37-2', drawn.slice(0, -1)));
      }),
    );
  });

  test('the alphabet has 32 characters, without I, L, O and U', () => {
    expect(NUMBER_ALPHABET).toBe('0123456789ABCDEFGHJKMNPQRSTVWXYZ');
  });

  test('a payload whose check character is * or a letter left out is drawn again', () => {
    const unusable = '*ILOU';
    for (const wanted of unusable) {
      const first = payloadWithCheck(wanted);
      const draws = [...first, ...'4K7QX29'].map((character) => NUMBER_ALPHABET.indexOf(character));
      expect(drawNumber('J', () => draws.shift() ?? 0)).toBe('J4K7QX290');
    }
  });

  test('a broken random source ends in an error, not in a number or a hang', () => {
    expect(() => drawNumber('J', () => 32)).toThrow(RangeError);
    const bad = [...payloadWithCheck('*')].map((character) => NUMBER_ALPHABET.indexOf(character));
    let at = 0;
    expect(() => drawNumber('J', () => bad[at++ % 7] ?? 0)).toThrow(RangeError);
  });

  function payloadWithCheck(wanted: string): string {
    for (const a of NUMBER_ALPHABET) {
      for (const b of NUMBER_ALPHABET) {
        const payload = `00000${a}${b}`;
        if (checkCharacter('mod-37-2', `J${payload}`) === wanted) return payload;
      }
    }
    throw new Error(`no payload ends in ${wanted}`);
  }
});

describe('reading a number', () => {
  test('what is shown is read back', () => {
    fc.assert(
      fc.property(number, (drawn) => {
        expect(readNumber(showNumber(drawn))).toEqual({ ok: true, kind: drawn.charAt(0), number: drawn });
      }),
    );
  });

  test('case, spaces, dashes and letters for digits do not matter', () => {
    const loosened = (drawn: string) =>
      drawn
        .toLowerCase()
        .split('')
        .map((character) => ({ '0': 'o', '1': 'l' })[character] ?? character)
        .join(' - ');
    fc.assert(
      fc.property(number, (drawn) => {
        expect(readNumber(`  ${loosened(drawn)}. `)).toEqual({
          ok: true,
          kind: drawn.charAt(0),
          number: drawn,
        });
      }),
    );
  });

  test.each([
    ['I for 1', 'JI', 'J1'],
    ['a capital O for 0', 'JO', 'J0'],
  ])('%s', (_name, typed, meant) => {
    const complete = `${meant}234567`;
    const check = checkCharacter('mod-37-2', complete) ?? '';
    expect(readNumber(`${typed}234567${check}`)).toEqual({ ok: true, kind: 'J', number: complete + check });
  });

  test('full-width letters, en dashes, soft hyphens and no-break spaces are read too', () => {
    expect(readNumber('\uFF2A\u20134K7Q\u00AD\u00A0X290')).toEqual({
      ok: true,
      kind: 'J',
      number: 'J4K7QX290',
    });
  });

  test.each([
    'https://mend.example.org/track/J-4K7Q-X290',
    'https://mend.example.org/track/J-4K7Q-X290/',
    'HTTPS://MEND.EXAMPLE.ORG/T/J4K7QX290',
    'https://mend.example.org/track?number=J-4K7Q-X290',
    'https://mend.example.org/track/J-4K7Q-X290?print=1#top',
    'mend.example.org/j-4k7q-x290',
  ])('a scanned address gives its number: %s', (text) => {
    expect(readNumber(text)).toEqual({ ok: true, kind: 'J', number: 'J4K7QX290' });
  });

  test('the path of an address goes before what follows the question mark', () => {
    expect(readNumber('https://mend.example.org/J-4K7Q-X290?from=J00000012')).toMatchObject({
      number: 'J4K7QX290',
    });
  });

  test.each<[string, string, NumberFault]>([
    ['nothing', '', 'empty'],
    ['only separators', ' - – / ', 'empty'],
    ['one character missing', 'J-4K7Q-X29', 'length'],
    ['one too many', 'J-4K7Q-X2900', 'length'],
    ['another first letter', 'X-4K7Q-X290', 'kind'],
    ['a U', 'J-4K7Q-U290', 'character'],
    ['an asterisk', 'J-4K7Q-X29*', 'character'],
    ['a wrong character', 'J-4K7Q-X291', 'check'],
    ['an address without a number', 'https://mend.example.org/prices', 'length'],
  ])('%s is refused as such', (_name, text, reason) => {
    expect(readNumber(text)).toEqual({ ok: false, reason });
  });

  const anyCharacter = fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code));
  const likely = fc.constantFrom(...ALL, '-', ' ', '/', '?', '#');
  const typed = fc.string({ unit: fc.oneof({ weight: 9, arbitrary: likely }, anyCharacter), maxLength: 24 });

  test('no text makes it throw, and what it accepts has a valid check', () => {
    fc.assert(
      fc.property(typed, (text) => {
        const reading = readNumber(text);
        if (reading.ok) expect(hasValidCheck('mod-37-2', reading.number)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what MOD 37-2 catches, tried exhaustively on each number', () => {
  test('every single substitution', () => {
    fc.assert(
      fc.property(number, (drawn) => {
        for (let i = 0; i < drawn.length; i += 1) {
          for (const other of `${ALL}*`) {
            if (other === drawn[i]) continue;
            const wrong = drawn.slice(0, i) + other + drawn.slice(i + 1);
            expect(hasValidCheck('mod-37-2', wrong), `${drawn} as ${wrong}`).toBe(false);
            const reading = readNumber(wrong);
            // O, I and L are read as digits, and may so be the very character meant.
            expect(!reading.ok || reading.number === drawn, `${drawn} as ${wrong}`).toBe(true);
          }
        }
      }),
      { numRuns: 50 },
    );
  });

  test('every swap of two neighbours, and every swap over one character', () => {
    fc.assert(
      fc.property(number, (drawn) => {
        for (const gap of [1, 2]) {
          for (let i = 0; i + gap < drawn.length; i += 1) {
            const wrong = swapped(drawn, i, i + gap);
            if (wrong === drawn) continue;
            expect(hasValidCheck('mod-37-2', wrong), `${drawn} as ${wrong}`).toBe(false);
            expect(readNumber(wrong).ok, `${drawn} as ${wrong}`).toBe(false);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });
});

describe('explaining a refusal', () => {
  const reasons: NumberFault[] = ['empty', 'length', 'kind', 'character', 'check'];

  test('each reason has its own sentence, and none says that nothing was found', () => {
    const sentences = reasons.map((reason) => explainReading(reason));
    expect(new Set(sentences).size).toBe(reasons.length);
    for (const sentence of sentences) {
      expect(sentence).toMatch(/\.$/);
      expect(sentence).not.toMatch(/not found|unknown|no such/i);
    }
  });

  test('a failed check says that one character looks wrong', () => {
    expect(explainReading('check')).toMatch(/^One character looks wrong/);
  });

  test('the example shown to people is itself a valid number', () => {
    const example = /J-[0-9A-Z]{4}-[0-9A-Z]{4}/.exec(explainReading('length'))?.[0] ?? '';
    expect(readNumber(example).ok).toBe(true);
  });
});

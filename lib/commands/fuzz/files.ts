import fc from 'fast-check';
import sharp from 'sharp';
import { hostileText } from './hostile';
import type { Part } from './requests';

const tile = { create: { width: 48, height: 32, channels: 3, background: '#7c7464' } } as const;
const photos = await Promise.all([
  sharp(tile).jpeg().toBuffer(),
  sharp(tile).png().toBuffer(),
  sharp(tile).webp().toBuffer(),
]);

/** The bytes of a small picture, whole or with some of them changed, cut off or repeated. */
export const hostilePhoto: fc.Arbitrary<Buffer> = fc.constantFrom(...photos).chain((photo) =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant(photo) },
    { weight: 1, arbitrary: fc.nat({ max: photo.length }).map((end) => photo.subarray(0, end)) },
    { weight: 1, arbitrary: fc.nat({ max: 40 }).map((more) => Buffer.concat([photo, photo.subarray(more)])) },
    {
      weight: 2,
      arbitrary: fc
        .array(fc.tuple(fc.nat({ max: photo.length - 1 }), fc.nat({ max: 255 })), {
          minLength: 1,
          maxLength: 6,
        })
        .map((changes) => {
          const changed = Buffer.from(photo);
          for (const [at, byte] of changes) changed[at] = byte;
          return changed;
        }),
    },
  ),
);

/** The workshop's list with some of its cells changed, as they stand between two commas. */
function hostileList(list: string): fc.Arbitrary<Buffer> {
  const lines = list.split('\n').map((line) => line.split(','));
  const change = fc.tuple(fc.nat({ max: lines.length - 1 }), fc.nat({ max: 40 }), hostileText);
  return fc.array(change, { maxLength: 4 }).map((changes) => {
    const changed = lines.map((cells) => [...cells]);
    for (const [row, column, text] of changes) {
      const cells = changed[row];
      if (cells) cells[column % cells.length] = text;
    }
    return Buffer.from(changed.map((cells) => cells.join(',')).join('\n'));
  });
}

/** A file in a field of a form: mostly a picture, sometimes the workshop's list or no file of any kind, under any name. */
export function hostileFile(name: string, list: string): fc.Arbitrary<Part[]> {
  const bytes = fc.oneof(
    { weight: 4, arbitrary: hostilePhoto },
    { weight: 1, arbitrary: hostileList(list) },
    { weight: 1, arbitrary: hostileText.map((text) => Buffer.from(text)) },
  );
  const called = fc.oneof(
    { weight: 2, arbitrary: fc.constant('lid.jpg') },
    { weight: 1, arbitrary: hostileText.map((text) => text.slice(0, 300)) },
  );
  return fc.tuple(bytes, called).map(([bytes, file]) => [{ name, value: '', file, bytes }]);
}

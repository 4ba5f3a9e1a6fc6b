import {
  BarcodeFormat,
  BinaryBitmap,
  DecodeHintType,
  HybridBinarizer,
  MultiFormatReader,
  RGBLuminanceSource,
} from '@zxing/library';

// What our own papers carry, and what makers print serials in (common practice, no source).
const FORMATS = [
  BarcodeFormat.QR_CODE,
  BarcodeFormat.DATA_MATRIX,
  BarcodeFormat.CODE_128,
  BarcodeFormat.CODE_39,
];

const reader = new MultiFormatReader();
reader.setHints(
  new Map<DecodeHintType, unknown>([
    [DecodeHintType.POSSIBLE_FORMATS, FORMATS],
    [DecodeHintType.TRY_HARDER, true],
  ]),
);

/** A picture as a canvas hands it over: four bytes a point, red, green, blue and how solid it is. */
export type Pixels = { data: Uint8ClampedArray; width: number; height: number };

/**
 * The text of the first code found in a picture, or null. Bars are read upright and turned by a quarter, since a label may
 * stand on its side.
 */
export function readCode(pixels: Pixels): string | null {
  const grey = greyOf(pixels);
  return (
    decode(grey, pixels.width, pixels.height) ?? decode(turned(grey, pixels), pixels.height, pixels.width)
  );
}

function decode(grey: Uint8ClampedArray, width: number, height: number): string | null {
  try {
    const source = new RGBLuminanceSource(grey, width, height);
    const text = reader.decodeWithState(new BinaryBitmap(new HybridBinarizer(source))).getText();
    return text === '' ? null : text;
  } catch {
    // It throws when there is no code, when its check does not come out, and on pictures it cannot digest: none of them
    // ends the looking.
    return null;
  }
}

// Luma by the weights of ITU-R BT.601, in 1024ths so that no fractions are needed.
function greyOf({ data, width, height }: Pixels): Uint8ClampedArray {
  const grey = new Uint8ClampedArray(width * height);
  for (let i = 0; i < grey.length; i += 1) {
    const [red = 0, green = 0, blue = 0] = [data[4 * i], data[4 * i + 1], data[4 * i + 2]];
    grey[i] = (306 * red + 601 * green + 117 * blue + 512) >> 10;
  }
  return grey;
}

function turned(grey: Uint8ClampedArray, { width, height }: Pixels): Uint8ClampedArray {
  const other = new Uint8ClampedArray(grey.length);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) other[x * height + (height - 1 - y)] = grey[y * width + x] ?? 0;
  }
  return other;
}

import sharp from 'sharp';

export type PhotoFile = { name: string; mimeType: string; buffer: Buffer };

// Invented: a place in the open sea.
const place = {
  GPSLatitudeRef: 'N',
  GPSLatitude: '49/1 30/1 1530/100',
  GPSLongitudeRef: 'W',
  GPSLongitude: '9/1 12/1 4410/100',
};

/** A photo as a phone takes it, with the place where it was taken; another name is another picture. */
export async function phonePhoto(name: string): Promise<PhotoFile> {
  const shade = [...name].reduce((sum, letter) => sum + letter.charCodeAt(0), 0) % 256;
  const background = { r: 122, g: shade, b: 112 };
  const picture = sharp({ create: { width: 1600, height: 1200, channels: 3, background } });
  const buffer = await picture
    .jpeg({ quality: 80 })
    .withExif({ IFD0: { Make: 'Lanternfish', Model: 'P2' }, IFD3: place })
    .toBuffer();
  return { name, mimeType: 'image/jpeg', buffer };
}

/** What a picture tells beside its pixels, as Latin text; empty when it tells nothing. */
export async function tellsBesidesPixels(bytes: Uint8Array): Promise<string> {
  const { exif, iptc, xmp } = await sharp(bytes).metadata();
  return [exif, iptc, xmp].map((part) => part?.toString('latin1') ?? '').join('');
}

import type { PhotoProps } from '@/app/ui/photos/photo';
import type { QuoteRecord } from '@/lib/quotes/records';

/** The photos of a quote as the workshop's pages show them. */
export function quotePhotos(quote: QuoteRecord): PhotoProps[] {
  return quote.photos.map((photo, index) => ({
    src: `/workshop/photo/${photo.id}?size=thumb`,
    full: `/workshop/photo/${photo.id}`,
    alt: photo.caption || `Photo ${index + 1} of what the price is asked for`,
    width: photo.width,
    height: photo.height,
    caption: photo.caption || `Photo ${index + 1}`,
  }));
}

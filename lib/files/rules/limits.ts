/** What a megabyte is wherever a file is measured: at its field, ahead of its form and when it is kept. */
export const MEGABYTE = 1024 * 1024;

/** A photo has at most so many. */
export const PHOTO_MEGABYTES = 15;

/** Kinds of photo that are taken. Asking for them makes a phone hand over a JPEG where it would otherwise send its own format. */
export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp', 'image/avif'] as const;
export const PHOTO_TYPE_WORDS = 'JPEG, PNG, WebP or AVIF';

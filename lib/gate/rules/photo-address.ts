/** Where a customer's photo is put ahead of its form; the one address that takes a PUT. */
export const PHOTO_ADDRESS = '/photo';

/** Digits and capital letters in the order that ISO/IEC 7064 gives them values 0 to 35. */
export const ALPHANUMERIC = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** How often one caller may look up certificates: often enough for a typing error or ten, too seldom to guess a number. */
export const CERTIFICATE_LIMIT = { max: 60, windowSeconds: 600 };
export const CLAIM_LIMIT = { max: 20, windowSeconds: 600 };

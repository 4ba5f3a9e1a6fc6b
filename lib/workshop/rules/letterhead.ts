export type PostalAddress = { addressLines: readonly string[]; town: string; postcode: string };

/** Who signs a paper: name, address in lines, telephone and mail where they are known. */
export type Letterhead = { name: string; address: string[]; phone: string | null; email: string | null };

/**
 * An address in the lines of a label, without the name and without empty ones. `country` ends it by its name where it is read
 * abroad, or may be.
 *
 * postalLines({ addressLines: ['12 Chandler Row', ''], town: 'Sandmouth', postcode: 'QM4 7QY' }, 'United Kingdom')
 *   -> ['12 Chandler Row', 'Sandmouth', 'QM4 7QY', 'United Kingdom']
 */
export function postalLines(address: PostalAddress, country: string | null = null): string[] {
  return [...address.addressLines, address.town, address.postcode, country ?? ''].filter(
    (line) => line.trim() !== '',
  );
}

/** The workshop, or the seller of an invoice as it was then, as the head of a paper names it. */
export function letterheadOf(
  card: PostalAddress & { name: string; phone: string; email: string },
  country: string | null = null,
): Letterhead {
  return {
    name: card.name,
    address: postalLines(card, country),
    phone: card.phone || null,
    email: card.email || null,
  };
}

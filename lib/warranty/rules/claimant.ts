export type Contact = { name: string; email: string };

/**
 * Whether a claim on a certificate that does not pass to a new owner was opened under another name or another address than the
 * repair it began with. It decides nothing: people move, marry and write from elsewhere, so a person looks at both.
 * Example: 'Rosa Lindqvist' against 'rosa  lindqvist' at the same address is the same.
 */
export function isOtherClaimant(o: { transferable: boolean; first: Contact; claimant: Contact }): boolean {
  if (o.transferable) return false;
  return (['name', 'email'] as const).some((each) => folded(o.first[each]) !== folded(o.claimant[each]));
}

function folded(text: string): string {
  return text.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
}

export type TraderCard = {
  name: string;
  addressLines: readonly string[];
  town: string;
  postcode: string;
  email: string;
  phone: string;
};

/** The workshop as its customers have to be told who it is: name, whole address, mail and telephone. */
export function traderOf({ name, addressLines, town, postcode, email, phone }: TraderCard) {
  const lines = [...addressLines, `${town} ${postcode}`.trim()].filter((line) => line !== '');
  return { name, addressLines: lines, email, phone };
}

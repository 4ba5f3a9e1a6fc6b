export type ToldAccessory = { name: string; isArrived: boolean };

/**
 * What differs between the booking and the parcel, in words for the customer: missing first, then what came extra.
 *
 * accessoryDifferences([{ name: 'Power supply', isArrived: false }], ['Strap'])
 *   -> ['Power supply was not in the parcel', 'Strap came with it and is kept with the unit']
 */
export function accessoryDifferences(told: readonly ToldAccessory[], extra: readonly string[]): string[] {
  return [
    ...told
      .filter((accessory) => !accessory.isArrived)
      .map((accessory) => `${accessory.name} was not in the parcel`),
    ...extra.map((name) => `${name} came with it and is kept with the unit`),
  ];
}

/** One contact of a connector. */
export type Pin = {
  /** As printed on drawings: 'A4', '17', 'T'. */
  pin: string;
  name: string;
  /** Pins of the same net may read joined. */
  net: string;
  /** Where it stands, seen from the solder side; pins next to each other in a row differ by 1 in position. */
  row: number;
  position: number;
  /** No circuit behind it: not asked for continuity. */
  isUnused?: boolean;
};

export type PinTable = {
  key: string;
  name: string;
  pins: readonly Pin[];
  /** Pins at the same position of neighbouring rows are neighbours too. */
  isFacing: boolean;
  /** Neighbours that rows and positions do not show. */
  alsoNear?: readonly (readonly [string, string])[];
  note: string;
};

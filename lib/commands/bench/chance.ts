/** Numbers that look drawn and are the same on every run (Park and Miller 1988, minimal standard generator). */
export type Chance = {
  /** a whole number from 0 to n - 1 */
  below: (n: number) => number;
  /** true this often, 0 to 1 */
  happens: (share: number) => boolean;
  pick: <T>(from: readonly T[]) => T;
};

export function chanceFrom(seed: number): Chance {
  let state = (Math.abs(Math.trunc(seed)) % 2_147_483_646) + 1;
  const next = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state;
  };
  // The first draws of neighbouring seeds resemble each other.
  for (let i = 0; i < 8; i += 1) next();
  const below = (n: number) => Math.floor((next() / 2_147_483_647) * n);
  return {
    below,
    happens: (share) => below(1_000_000) < share * 1_000_000,
    pick: (from) => {
      const picked = from[below(from.length)];
      if (picked === undefined) throw new RangeError('nothing to pick from');
      return picked;
    },
  };
}

/** Shares of units, in per cent, that a workshop may want ready by their promise. */
export const AIMS = [50, 70, 80, 90, 95] as const;
export type PromiseAim = (typeof AIMS)[number];

export const USUAL_AIM: PromiseAim = 80;

/** A stored aim; the usual one for what is none. */
export function readAim(percent: number): PromiseAim {
  return AIMS.find((aim) => aim === percent) ?? USUAL_AIM;
}

/** The share of jobs a promise is reckoned with: of 80 per cent 0.8. */
export function shareOf(aim: PromiseAim): number {
  return aim / 100;
}

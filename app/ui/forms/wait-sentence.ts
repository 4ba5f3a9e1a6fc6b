/** What a person who asked too often is told. waitSentence(95) -> 'Too many tries. Wait 2 minutes, then try again.' */
export function waitSentence(seconds: number): string {
  const minutes = Math.ceil(seconds / 60);
  return `Too many tries. Wait ${minutes <= 1 ? 'a minute' : `${minutes} minutes`}, then try again.`;
}

// The few functions that this room takes from jstat, which ships no types of its own.
declare module 'jstat' {
  type Distribution = { inv(probability: number, ...parameters: number[]): number };
  const jStat: {
    normal: Distribution;
    beta: Distribution;
    studentt: Distribution;
    chisquare: Distribution;
    binomial: { cdf(count: number, of: number, share: number): number };
  };
  export = jStat;
}

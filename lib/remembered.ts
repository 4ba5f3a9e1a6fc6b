const all: { forget(): void }[] = [];

export type Remembered<T> = {
  /** What is remembered under the key, or what `read` answers now; an answer that fails is not. */
  of(key: string, now: Date, read: () => Promise<T>): Promise<T>;
  forget(): void;
};

/**
 * Remembers answers that are asked for often and change seldom, in this process, each for some milliseconds by the clock of who asks. Other
 * instances of the app see a change only when theirs has run out, so nothing that must be exact may come from here.
 */
export function rememberFor<T>(milliseconds: number): Remembered<T> {
  const known = new Map<string, { until: number; answer: Promise<T> }>();
  const remembered = {
    of(key: string, now: Date, read: () => Promise<T>) {
      const at = now.getTime();
      const seen = known.get(key);
      if (seen && at < seen.until) return seen.answer;
      for (const [each, { until }] of known) if (until <= at) known.delete(each);
      const answer = read();
      known.set(key, { until: at + milliseconds, answer });
      // What failed is asked again by the next.
      answer.catch(() => {
        if (known.get(key)?.answer === answer) known.delete(key);
      });
      return answer;
    },
    forget: () => known.clear(),
  };
  all.push(remembered);
  return remembered;
}

/** Forgets every remembered answer of this process: for whoever empties the database under it. */
export function forgetRemembered(): void {
  for (const remembered of all) remembered.forget();
}

import type { ReactNode } from 'react';

export type Fact = { term: string; text: ReactNode };

/**
 * What is known, as terms and texts; facts without a text, or with a condition that was not met, are left out.
 *
 * ```tsx
 * <Facts items={[{ term: 'Serial', text: <NumberText text="MR4-0581-S" /> }, { term: 'Arrived', text: 'Tuesday 1 December' }]} />
 * ```
 */
export function Facts({ items, small }: { items: readonly Fact[]; small?: boolean }) {
  const known = items.filter(
    ({ text }) => text !== null && text !== undefined && text !== '' && text !== false,
  );
  if (known.length === 0) return null;
  return (
    <dl className={small ? 'facts facts-small' : 'facts'}>
      {known.map((item) => (
        <div key={item.term}>
          <dt>{item.term}</dt>
          <dd>{item.text}</dd>
        </div>
      ))}
    </dl>
  );
}

import type { Route } from 'next';
import { TextLink } from '@/app/ui/page/text-link';
import type { PriceKind } from '@/lib/catalogue/price-list';

type Props = { kinds: readonly PriceKind[]; chosen: string | null; typed: string };

/** Leads to the prices of one kind of device; what was searched for stays. Nothing where there is no choice. */
export function FamilyFilter({ kinds, chosen, typed }: Props) {
  if (kinds.length < 2) return null;
  const choices = [
    { slug: null, words: 'All devices' },
    ...kinds.map(({ slug, name, repairs }) => ({ slug, words: `${name} (${repairs})` })),
  ];
  return (
    <nav aria-label="Prices by device" className="mt-4">
      <ul className="flex flex-wrap gap-x-6">
        {choices.map(({ slug, words }) => (
          <li key={slug} className="py-2.5">
            {slug === chosen ? (
              <strong aria-current="page">{words}</strong>
            ) : (
              <TextLink href={addressOf(slug, typed)}>{words}</TextLink>
            )}
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** The address of one page of the prices, of a kind of device or of all. */
export function addressOf(slug: string | null, typed: string, page = 1): Route {
  const query = new URLSearchParams();
  if (typed.trim() !== '') query.set('q', typed.trim());
  if (slug !== null) query.set('family', slug);
  if (page > 1) query.set('page', String(page));
  return query.size === 0 ? '/prices' : `/prices?${query}`;
}

import { TextLink } from '@/app/ui/page/text-link';
import type { ListedFamily } from '@/lib/catalogue/price-list';

type Props = { families: readonly ListedFamily[]; chosen: string | null; typed: string };

/** Leads to the prices of one kind of device; what was searched for stays. Nothing where there is no choice. */
export function FamilyFilter({ families, chosen, typed }: Props) {
  if (families.length < 2) return null;
  const kinds = [
    { slug: null, words: 'All devices' },
    ...families.map((family) => ({ slug: family.slug, words: `${family.name} (${repairsIn(family)})` })),
  ];
  return (
    <nav aria-label="Prices by device" className="mt-4">
      <ul className="flex flex-wrap gap-x-6">
        {kinds.map(({ slug, words }) => (
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

function repairsIn(family: ListedFamily): number {
  return family.models.reduce((sum, model) => sum + model.repairs.length, 0);
}

/** The address of one page of the prices, of a kind of device or of all. */
export function addressOf(slug: string | null, typed: string, page = 1): string {
  const query = new URLSearchParams();
  if (typed.trim() !== '') query.set('q', typed.trim());
  if (slug !== null) query.set('family', slug);
  if (page > 1) query.set('page', String(page));
  return query.size === 0 ? '/prices' : `/prices?${query}`;
}

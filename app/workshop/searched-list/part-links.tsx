import { TextLink } from '@/app/ui/page/text-link';
import { type Listed, listAddress } from './list-address';

type PartLinksProps = {
  label: string;
  listed: Listed;
  /** the name of the part in the address */
  name: string;
  chosen: string | null;
  /** each with its words and how many of what was found it holds; all of them are offered before */
  parts: readonly { value: string; words: string; count: number }[];
  all: number;
};

/** Links to the parts of a list; a part keeps the search and begins at its first page. */
export function PartLinks({ label, listed, name, chosen, parts, all }: PartLinksProps) {
  const links = [{ value: null, words: 'All', count: all }, ...parts];
  return (
    <nav aria-label={label} className="mb-6">
      <ul className="flex flex-wrap gap-x-6">
        {links.map(({ value, words, count }) => (
          <li key={value ?? ''} className="py-2.5">
            {value === chosen ? (
              <strong aria-current="page">{`${words} (${count})`}</strong>
            ) : (
              <TextLink
                href={listAddress({ ...listed, page: 1, part: [name, value] })}
              >{`${words} (${count})`}</TextLink>
            )}
          </li>
        ))}
      </ul>
    </nav>
  );
}

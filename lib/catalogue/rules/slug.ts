import { foldText } from './search';

/** The last part of an address made from a name: 'Skerrin Two (MkII)' is 'skerrin-two-mkii'; 'x' where nothing is left. */
export function slugOf(name: string): string {
  return foldText(name).replaceAll(' ', '-').slice(0, 60).replace(/-+$/, '') || 'x';
}

/** The first of slug, slug-2, slug-3 … that is not taken. */
export function freeSlug(slug: string, taken: ReadonlySet<string>): string {
  if (!taken.has(slug)) return slug;
  for (let n = 2; ; n += 1) if (!taken.has(`${slug}-${n}`)) return `${slug}-${n}`;
}

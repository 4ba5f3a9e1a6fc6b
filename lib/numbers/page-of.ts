/**
 * One page of a list of `total` rows, pages counting from 1: a page past the end is the last one, one before the first the
 * first, and an empty list has one page. `skip` is how many rows stand before it.
 *
 * pageOf(60, { page: 99, size: 25 }) -> { page: 3, pages: 3, skip: 50, take: 25 }
 */
export function pageOf(
  total: number,
  { page: asked, size }: { page: number; size: number },
): { page: number; pages: number; skip: number; take: number } {
  if (!Number.isInteger(size) || size < 1) throw new RangeError(`Not a size of a page: ${size}`);
  const pages = Math.max(1, Math.ceil(total / size));
  const page = Math.min(pages, Math.max(1, Math.trunc(asked) || 1));
  return { page, pages, skip: (page - 1) * size, take: size };
}

import { Prisma } from '@/lib/db/generated/client';
import { plainInPattern } from '@/lib/db/like';
import { soughtFrom, telephoneIn } from './rules/sought';

/**
 * Where a text that somebody says or types is looked for, as SQL. Each begins with the very expression that one of the indexes of
 * `prisma/migrations/…_find_what_a_caller_says` is on, which finds a few rows; what follows reads those rows exactly, since
 * the expression joins several columns. Two tables are never asked for in one condition: it could use the indexes of neither.
 */

/** A text as each kind of column is asked for it; null where the text cannot be of that kind. */
function askedAs(q: string) {
  const sought = soughtFrom(q);
  const key = sought.kind === 'text' ? sought.key : '';
  const telephone = telephoneIn(q);
  return {
    text: `%${plainInPattern(q.trim())}%`,
    key: key === '' ? null : key,
    // Letters alone are a name; a postcode has a digit nearly everywhere.
    postcode: key.length >= 3 && /\d/.test(key) ? `${key.toLowerCase()}%` : null,
    telephone: telephone === null ? null : `%${telephone}`,
  };
}

/** The expression holds one of these patterns, each told once. */
function holds(expression: Prisma.Sql, patterns: readonly (string | null)[]): Prisma.Sql {
  const told = [...new Set(patterns.flatMap((pattern) => (pattern === null ? [] : pattern.toLowerCase())))];
  const each = told.map((pattern) => Prisma.sql`${expression} LIKE ${pattern}`);
  return Prisma.sql`(${Prisma.join(each, ' OR ')})`;
}

const anyOf = (conditions: readonly (Prisma.Sql | false)[]) =>
  Prisma.sql`(${Prisma.join(
    conditions.filter((condition) => condition !== false),
    ' OR ',
  )})`;

const CUSTOMER = Prisma.sql`(lower(c."name") || ' ' || lower(c."email") || ' ' || lower(c."town") || ' '
  || regexp_replace(lower(c."postcode"), '[^a-z0-9]', '', 'g') || ' ' || regexp_replace(c."phone", '[^0-9]', '', 'g'))`;

/** The condition on `"customer" c` whose name, e-mail, town, postcode or telephone a text is a part of. */
export function customerSought(q: string): Prisma.Sql {
  const { text, postcode, telephone } = askedAs(q);
  return Prisma.sql`${holds(CUSTOMER, [text, postcode && `%${postcode}`, telephone])} AND ${anyOf([
    Prisma.sql`c."name" ILIKE ${text} OR c."email" ILIKE ${text} OR c."town" ILIKE ${text}`,
    postcode !== null &&
      Prisma.sql`regexp_replace(lower(c."postcode"), '[^a-z0-9]', '', 'g') LIKE ${postcode}`,
    telephone !== null && Prisma.sql`regexp_replace(c."phone", '[^0-9]', '', 'g') LIKE ${telephone}`,
  ])}`;
}

const REQUEST = Prisma.sql`(lower(r."name") || ' ' || lower(r."email") || ' ' || lower(r."device") || ' '
  || lower(r."serialKey") || ' ' || regexp_replace(r."phone", '[^0-9]', '', 'g'))`;

/** The same on `"quote_request" r`, by the person who asked and, unless `of` is 'person', by the unit. */
export function requestSought(q: string, of: 'person' | 'all'): Prisma.Sql {
  const { text, telephone, key: typed } = askedAs(q);
  const key = of === 'all' && typed !== null ? `%${typed}%` : null;
  return Prisma.sql`${holds(REQUEST, [text, key, telephone])} AND ${anyOf([
    Prisma.sql`r."name" ILIKE ${text} OR r."email" ILIKE ${text}`,
    of === 'all' && Prisma.sql`r."device" ILIKE ${text}`,
    key !== null && Prisma.sql`r."serialKey" LIKE ${key}`,
    telephone !== null && Prisma.sql`regexp_replace(r."phone", '[^0-9]', '', 'g') LIKE ${telephone}`,
  ])}`;
}

/** A query for the ids of jobs: by number, serial, what a carrier calls their parcels, or whose they are. */
export function jobsSought(q: string): Prisma.Sql {
  const sought = soughtFrom(q);
  if (sought.kind === 'number' && sought.of === 'J')
    return Prisma.sql`SELECT "id" FROM "job" WHERE "number" = ${sought.number}`;
  const places = [
    Prisma.sql`SELECT j."id" FROM "customer" c JOIN "job" j ON j."customerId" = c."id" WHERE ${customerSought(q)}`,
  ];
  const { key } = askedAs(q);
  if (key !== null) {
    places.push(inNumbersOfJob(key));
    const asNumber = ourNumber(key);
    if (asNumber !== key)
      places.push(Prisma.sql`${inNumbersOfJob(asNumber)} AND "number" LIKE ${`%${asNumber}%`}`);
  }
  return Prisma.join(places, ' UNION ');
}

function inNumbersOfJob(key: string): Prisma.Sql {
  return Prisma.sql`SELECT "id" FROM "job" WHERE ("number" || ' ' || "serialKey" || ' '
    || upper(regexp_replace("inboundReference", '[^A-Za-z0-9]', '', 'g')) || ' '
    || upper(regexp_replace("carrierReference", '[^A-Za-z0-9]', '', 'g'))) LIKE ${`%${key}%`}`;
}

/** Our numbers hold no O, I or L (lib/numbers/job-number.ts). */
export function ourNumber(key: string): string {
  return key.replaceAll('O', '0').replace(/[IL]/g, '1');
}

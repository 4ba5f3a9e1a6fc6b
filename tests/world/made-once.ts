import { onServer } from '@/lib/db/server';
import { emptyEverything } from './empty-everything';

/**
 * Rows that every test of a file begins with: made by the use cases the first time, put back as they were each time
 * after. Returns a copy of what `make` returned, which therefore has to be plain data. Files in the store stay.
 */
export function madeOnce<T>(make: () => Promise<T>): () => Promise<T> {
  let made: { value: T } | undefined;
  return async () => {
    if (made) {
      await run(`${emptyEverything}; ${putBack}`);
    } else {
      await run(emptyEverything);
      made = { value: await make() };
      await run(keep);
    }
    return structuredClone(made.value);
  };
}

function run(sql: string): Promise<void> {
  return onServer(process.env['DATABASE_URL'] ?? '', async (client) => {
    await client.query(sql);
  });
}

const keep = `
drop schema if exists kept cascade;
create schema kept;
create table kept.counter (name regclass, value bigint, "isCalled" boolean);
do $$
declare
  t regclass;
begin
  for t in select c.oid from pg_class c where c.relkind = 'S' and c.relnamespace = 'public'::regnamespace
  loop execute format('insert into kept.counter select %L, last_value, is_called from %s', t, t); end loop;
  for t in select format('%I.%I', schemaname, tablename)::regclass from pg_tables
    where (schemaname = 'public' and tablename <> '_prisma_migrations')
       or (schemaname = 'pgboss' and tablename in ('job', 'archive'))
  loop execute format('create table kept.%I as table %s', t, t); end loop;
end $$`;

// Without triggers and foreign keys, which the rows have satisfied before: tables come back in any order. Only in this
// transaction: the embedded database has one session, which goes on.
const putBack = `
do $$
declare
  t regclass;
  columns text;
begin
  perform set_config('session_replication_role', 'replica', true);
  for t in select relname::regclass from pg_class
    where relnamespace = 'kept'::regnamespace and relkind = 'r' and relname <> 'counter'
  loop
    select string_agg(quote_ident(attname), ', ') into columns from pg_attribute
    where attrelid = t and attnum > 0 and not attisdropped and attgenerated = '';
    execute format('insert into %s (%s) overriding system value select %s from kept.%I', t, columns, columns, t);
  end loop;
  perform setval(name, value, "isCalled") from kept.counter;
end $$`;

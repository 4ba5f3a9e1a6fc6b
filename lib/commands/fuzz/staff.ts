import { config } from '@/lib/config';
import { onServer } from '@/lib/db/server';
import { demoOwner } from '@/lib/people/first-owner';
import { DEMO_STAFF } from '@/prisma/demo/staff';
import { bytesOf } from './bytes';
import { formsIn, untouched } from './forms';
import { type Answer, send } from './send';

export type Person = { role: string; email: string; password: string };

export const STAFF: Person[] = [demoOwner, ...DEMO_STAFF].map((person) => ({
  role: 'role' in person ? person.role : 'owner',
  email: person.email,
  password: person.password,
}));

/** Signs in as a person would, without script, and returns the cookie. */
export async function signIn(origin: string, who: { email: string; password: string }): Promise<string> {
  const page = await send(origin, { method: 'GET', path: '/workshop/sign-in', headers: {} });
  const form = 'body' in page ? formsIn(page.body, '/workshop/sign-in')[0] : undefined;
  if (!form) throw new Error('There is no form to sign in with.');
  const filled = untouched(form).map(({ name, value }) => ({
    name,
    value: name === 'email' ? who.email : name === 'password' ? who.password : value,
  }));
  const plan = {
    route: '',
    kind: 'without script',
    method: 'POST',
    path: form.page,
    headers: {},
    actionId: form.actionId,
    bound: JSON.parse(form.bound),
    parts: filled,
    harm: 'none',
  } as const;
  const answer = await send(origin, bytesOf(plan, { origin, cookie: '', address: '192.0.2.1' }));
  const cookie =
    'headers' in answer
      ? /[^,;]*session_token=[^;]+/.exec(answer.headers['set-cookie'] ?? '')?.[0]
      : undefined;
  if (!cookie) throw new Error(`${who.email} could not sign in: ${toldBy(answer)}.`);
  return cookie;
}

/** What an answer says that is no way in: its status, and the words of its page that ask to be heard. */
function toldBy(answer: Answer | { fault: string }): string {
  if (!('status' in answer)) return answer.fault;
  const [, words = ''] = /data-answer="problem"[^>]*>([\s\S]{0,3000})/.exec(answer.body) ?? [];
  return `${answer.status} ${words.replace(/<[^>]*>|\s+/g, ' ').slice(0, 300)}`;
}

/** Remembers who works here and with which password, and returns what puts that back: sessions are not kept. */
export async function keepStaff(): Promise<() => Promise<void>> {
  const tables = ['auth_user', 'auth_account'];
  const kept = await onServer(config.databaseUrl, async (client) => {
    const rows = await Promise.all(
      tables.map((table) => client.query<{ row: unknown }>(`select to_jsonb(t) as row from ${table} t`)),
    );
    return rows.map(({ rows }) => rows.map(({ row }) => row));
  });
  return () =>
    onServer(config.databaseUrl, async (client) => {
      for (const [place, table] of tables.entries()) {
        const { rows } = await client.query<{ names: string }>(
          "select string_agg(quote_ident(column_name), ', ') as names from information_schema.columns where table_name = $1 and table_schema = 'public'",
          [table],
        );
        const names = rows[0]?.names ?? '';
        const put = `update ${table} t set (${names}) = (select ${names} from jsonb_populate_record(null::${table}, $1)) where t.id = $1::jsonb ->> 'id'`;
        for (const row of kept[place] ?? []) await client.query(put, [JSON.stringify(row)]);
      }
      await client.query('update workshop set "asksSecondStep" = false');
      await client.query('delete from attempt');
      await client.query('delete from auth_two_factor');
    });
}

import { Client } from 'pg';

/** True for a database on this machine: tests empty what they use and must never reach another one. */
export function isLocalDatabase(url: string): boolean {
  const { hostname, searchParams } = new URL(url);
  const host = searchParams.get('host') ?? decodeURIComponent(hostname);
  return host.startsWith('/') || ['localhost', '127.0.0.1', '[::1]', ''].includes(host);
}

/** The same server and user, another database. */
export function databaseUrl(url: string, name: string): string {
  const changed = new URL(url);
  changed.pathname = `/${name}`;
  return changed.href;
}

export async function onServer<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

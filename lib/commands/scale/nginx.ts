import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Backend, Balancer } from './balancer';

const example = 'deploy/balancer.conf';

/**
 * nginx with the house's own example of its settings, instead of the small balancer of the tests. What is changed of them:
 * the port and no TLS, the instances' addresses, the port kept in the host, and which instance answered is told in
 * `x-served-by`. The address of the caller may be played with x-test-caller.
 */
export async function startNginx(port: number, backends: readonly Backend[]): Promise<Balancer> {
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-nginx-'));
  for (const name of ['body', 'proxy']) mkdirSync(path.join(folder, name));
  const file = path.join(folder, 'nginx.conf');
  writeFileSync(file, settings(folder, port, backends));
  const tried = spawnSync('nginx', ['-t', '-q', '-c', file], { encoding: 'utf8' });
  if (tried.status !== 0)
    throw new Error(`nginx refuses ${example}: ${tried.stderr || tried.error?.message}`);
  const nginx = spawn('nginx', ['-c', file], { stdio: ['ignore', 'ignore', 'inherit'] });
  const ended = once(nginx, 'exit');
  return {
    async stop() {
      nginx.kill('SIGTERM');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function settings(folder: string, port: number, backends: readonly Backend[]): string {
  const names = backends.map(({ name, port: of }) => `"~127\\.0\\.0\\.1:${of}$" ${name};`);
  return `
${process.getuid?.() === 0 ? 'user root;' : ''}
daemon off;
worker_processes 1;
pid ${folder}/pid;
error_log ${folder}/errors warn;
events {}
http {
  access_log off;
  client_body_temp_path ${folder}/body;
  proxy_temp_path ${folder}/proxy;
  map $http_x_test_caller $caller { "" 192.0.2.1; default $http_x_test_caller; }
  map $upstream_addr $served_by { default ""; ${names.join(' ')} }
  add_header x-served-by $served_by always;
${adapted(port, backends)}
}`;
}

function adapted(port: number, backends: readonly Backend[]): string {
  const changes: [from: RegExp, to: string][] = [
    ...backends.map(({ name, port: of }): [RegExp, string] => [
      new RegExp(`server app-${name}:3000`),
      `server 127.0.0.1:${of}`,
    ]),
    [/listen 443 ssl;/, `listen 127.0.0.1:${port};`],
    [/ +ssl_[^;]+;\n/g, ''],
    [/\$remote_addr/, '$caller'],
    [/\$host/g, '$http_host'],
  ];
  return changes.reduce(
    (text, [from, to]) => {
      const changed = text.replace(from, () => to);
      if (changed === text) throw new Error(`${example} has no ${from.source} any more`);
      return changed;
    },
    readFileSync(example, 'utf8'),
  );
}

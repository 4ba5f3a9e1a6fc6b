import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';

const entry = z.object({
  name: z.string().optional(),
  version: z.string().optional(),
  resolved: z.string().optional(),
  integrity: z.string().optional(),
  link: z.boolean().optional(),
  inBundle: z.boolean().optional(),
  hasInstallScript: z.boolean().optional(),
});
const lock = z
  .object({ packages: z.record(z.string(), entry) })
  .parse(JSON.parse(readFileSync('package-lock.json', 'utf8')));
const { allowScripts, dependencies, devDependencies } = z
  .object({
    allowScripts: z.record(z.string(), z.boolean()),
    dependencies: z.record(z.string(), z.string()),
    devDependencies: z.record(z.string(), z.string()),
  })
  .parse(JSON.parse(readFileSync('package.json', 'utf8')));

const installed = Object.entries(lock.packages).filter(([path]) => path !== '');

test('a package with an install script is named, allowed or not', () => {
  const withScript = installed
    .filter(([, { hasInstallScript }]) => hasInstallScript)
    .map(([path, { name }]) => name ?? path.replace(/^.*node_modules\//, ''));
  expect(installed.length).toBeGreaterThan(200);
  expect(withScript.length).toBeGreaterThan(0);
  expect(withScript.filter((name) => !Object.hasOwn(allowScripts, name))).toEqual([]);
  // A name without a package would let a later one in unseen.
  expect(Object.keys(allowScripts).filter((name) => !withScript.includes(name))).toEqual([]);
});

test('no package may run a script at installation', () => {
  expect(Object.entries(allowScripts).filter(([, isAllowed]) => isAllowed)).toEqual([]);
});

test('the lock names bytes, not a registry', () => {
  expect(installed.filter(([, { resolved }]) => resolved).map(([path]) => path)).toEqual([]);
  expect(
    installed
      .filter(([, { integrity, link, inBundle }]) => !link && !inBundle && !integrity)
      .map(([path]) => path),
  ).toEqual([]);
  expect(installed.filter(([, { integrity }]) => integrity && !/^sha512-/.test(integrity))).toEqual([]);
});

test('what is asked for is asked for at one version', () => {
  const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
    ([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version),
  );
  expect(loose).toEqual([]);
});

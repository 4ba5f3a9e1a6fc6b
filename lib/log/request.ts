import { AsyncLocalStorage } from 'node:async_hooks';

/** The request that the running code serves; everything it logs carries the request's id. */
export function requestIdNow(): string | undefined {
  return storage.getStore();
}

/** From here on, whatever the present handler starts belongs to this request. */
export function enterRequest(requestId: string): void {
  storage.enterWith(requestId);
}

// Next bundles its parts apart: they share one storage.
const key = Symbol.for('mendpost.request');
if (!Reflect.has(globalThis, key)) Reflect.set(globalThis, key, new AsyncLocalStorage<string>());
const storage: AsyncLocalStorage<string> = Reflect.get(globalThis, key);

import { AsyncLocalStorage } from 'node:async_hooks';

const inside = new AsyncLocalStorage<true>();

/** True while the caller runs within the function given to `transaction`. */
export function isInsideTransaction(): boolean {
  return inside.getStore() === true;
}

export function runInside<T>(work: () => Promise<T>): Promise<T> {
  return inside.run(true, work);
}

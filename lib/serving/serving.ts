import type { Server } from 'node:http';

type Serving = {
  isStarted: boolean;
  /** Told to stop: /ready says so, and nothing new is begun. */
  isStopping: boolean;
  /** requests without a finished answer */
  open: number;
  servers: Set<Server>;
};

const key = Symbol.for('mendpost.serving');
if (!Reflect.has(globalThis, key)) {
  Reflect.set(globalThis, key, {
    isStarted: false,
    isStopping: false,
    open: 0,
    servers: new Set(),
  } satisfies Serving);
}

/** What this process is doing, shared by the parts that Next bundles apart. */
export const serving: Serving = Reflect.get(globalThis, key);

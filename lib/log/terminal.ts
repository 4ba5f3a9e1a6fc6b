type Write = (line: string) => void;
export type Terminal = { info: Write; warn: Write; error: Write };

const key = Symbol.for('mendpost.terminal');

/** Where readable lines go: the console, or what it was before captureConsole. */
export function terminal(): Terminal {
  return Reflect.get(globalThis, key) ?? console;
}

/**
 * Takes the console away from libraries: what they write goes to `tell` as a level and the error among it, if any. Their
 * words are lost on purpose, since nobody knows what they repeat. Once per process.
 */
export function captureConsole(tell: (level: 'info' | 'warn' | 'error', error: unknown) => void): void {
  if (Reflect.has(globalThis, key)) return;
  const kept: Terminal = {
    info: console.info.bind(console),
    warn: console.warn.bind(console),
    error: console.error.bind(console),
  };
  Reflect.set(globalThis, key, kept);
  for (const level of ['info', 'warn', 'error'] as const) {
    console[level] = (...values: unknown[]) => tell(level, values.find(isError));
  }
  console.log = console.info;
  console.debug = () => {};
}

function isError(value: unknown): value is Error {
  return value instanceof Error;
}

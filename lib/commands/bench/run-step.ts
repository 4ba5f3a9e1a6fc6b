import { type ChildProcess, fork } from 'node:child_process';

/** Where a database is: on a server, or embedded in a folder when the address is empty. */
export type Place = { DATABASE_URL: string; DATA_DIR: string };

/**
 * Starts a step of the bench in a process of its own, which sends its answers as messages: settings are read once a
 * process, and each step has a database of its own.
 */
export function startStep(step: string, given: readonly string[], place: Partial<Place>): ChildProcess {
  return fork(`lib/commands/bench/${step}.ts`, given, {
    execArgv: ['--no-deprecation', '--expose-gc', '--conditions=react-server', '--import', 'tsx'],
    env: { ...process.env, ...place },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
}

/** The next message of a step; rejects when the step ends without one. */
export function nextAnswer<T>(child: ChildProcess, step: string): Promise<T> {
  return new Promise((resolve, reject) => {
    const ended = () => reject(new Error(`the step ${step} ended before it answered`));
    child.once('exit', ended);
    child.once('message', (answer) => {
      child.off('exit', ended);
      // What comes is what the step's own file sends, of the type it says it sends.
      resolve(answer as T);
    });
  });
}

/** Tells the parent, or whoever runs the step by hand. */
export function answer(message: object): void {
  if (process.send) process.send(message);
  else console.log(JSON.stringify(message, null, 2));
}

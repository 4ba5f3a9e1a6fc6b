export type Fault = { name: string; code?: string; at: string[] };

const DEPTH = 8;

/**
 * An error without its words: its class, its code (P2002, 23505, ECONNREFUSED) and where in the code it arose.
 *
 * faultOf(new TypeError('no job J12345678 of mira@example.org')) -> { name: 'TypeError', at: ['open-job.ts:12:9', …] }
 */
export function faultOf(error: unknown): Fault {
  if (!(error instanceof Error)) return { name: 'unknown', at: [] };
  const code = 'code' in error && typeof error.code === 'string' ? error.code : undefined;
  return {
    name: /^[A-Za-z]{1,60}$/.test(error.name) ? error.name : 'Error',
    ...(code && /^[A-Z0-9_]{1,40}$/.test(code) && { code }),
    at: framesOf(afterMessage(error)),
  };
}

// A message may hold lines that look like places in the code.
function afterMessage({ stack = '', message }: Error): string {
  const at = stack.indexOf(message);
  return at === -1 ? stack : stack.slice(at + message.length);
}

// Only the file's name with its place: names of functions can come from data, and folders are the machine's own affair.
const frame = /^ {4}at (?:.+ \()?(?:[a-z]+:)*(?:[^()]*[\\/])?([\w.[\]-]+?):(\d+):(\d+)\)?$/;

function framesOf(stack: string): string[] {
  return stack
    .split('\n')
    .flatMap((line) => {
      const [, file, row, column] = frame.exec(line) ?? [];
      return file && /\.[cm]?[jt]sx?$/.test(file) ? [`${file}:${row}:${column}`] : [];
    })
    .slice(0, DEPTH);
}

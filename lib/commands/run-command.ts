/** Runs a command's work: a refusal or a wrong argument is one line and no stack, and the exit code says how it went. */
export async function runCommand(usage: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (isWrongArgument(error)) {
      console.error(`Usage: ${usage}`);
      process.exit(2);
    }
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}

function isWrongArgument(error: unknown): boolean {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
}

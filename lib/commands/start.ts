/** `npm start`: everything between a fresh clone and the running app. */
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Mendpost needs Node 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}
if (process.platform === 'win32') {
  console.error('Mendpost does not run on Windows itself; it does in the Windows Subsystem for Linux.');
  process.exit(1);
}

// Prisma asks for several relations at once inside a transaction; pg queues them and announces that it will stop doing so.
// Nothing a person who starts the app can act on.
process.noDeprecation = true;

try {
  const { generateClient, hasClient } = await import('./generate-client');
  if (!hasClient()) generateClient();
  const { launch } = await import('./launch');
  await launch();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

export {};

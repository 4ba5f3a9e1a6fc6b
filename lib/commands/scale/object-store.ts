import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import S3rver from 's3rver';

export type ObjectStore = { settings: Record<string, string>; folder: string; stop: () => Promise<void> };

const bucket = 'mendpost';

/** Starts an S3-compatible store for tests, with one empty bucket in a folder that goes with it. */
export async function startObjectStore(): Promise<ObjectStore> {
  const folder = mkdtempSync(path.join(tmpdir(), 'mendpost-objects-'));
  const store = new S3rver({
    address: '127.0.0.1',
    port: 0,
    silent: true,
    directory: folder,
    configureBuckets: [{ name: bucket, configs: [] }],
  });
  const { port } = await store.run();
  return {
    folder: path.join(folder, bucket),
    // The key that s3rver knows.
    settings: {
      FILES: 's3',
      S3_BUCKET: bucket,
      S3_REGION: 'us-east-1',
      S3_ENDPOINT: `http://127.0.0.1:${port}`,
      S3_ACCESS_KEY_ID: 'S3RVER',
      S3_SECRET_ACCESS_KEY: 'S3RVER',
    },
    async stop() {
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

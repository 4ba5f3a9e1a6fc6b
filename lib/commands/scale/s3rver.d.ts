/** What is used of s3rver, which brings no types. */
declare module 's3rver' {
  type Options = {
    address: string;
    port: number;
    silent: boolean;
    directory: string;
    configureBuckets: { name: string; configs: string[] }[];
  };
  // biome-ignore lint/style/noDefaultExport: it is what the package exports
  export default class S3rver {
    constructor(options: Options);
    run(): Promise<{ address: string; port: number }>;
    close(): Promise<void>;
  }
}

import { createServer, connect as openSocket, type Socket } from 'node:net';

/** What becomes of a connection to the store. */
export type Weather = 'fine' | 'refused' | 'cut' | 'answer-lost';

/** A line to a store on this machine that can be made to fail, each way as networks do. */
export async function openLine(to: number) {
  const line = { port: 0, weather: 'fine' as Weather, stop: () => {} };
  const open = new Set<Socket>();
  const server = createServer((caller) => {
    if (line.weather === 'refused') return caller.destroy();
    const store = openSocket(to, '127.0.0.1');
    for (const socket of [caller, store]) {
      open.add(socket);
      socket.on('error', () => {});
      socket.on('close', () => {
        open.delete(socket);
        caller.destroy();
        store.destroy();
      });
    }
    let sent = 0;
    let isUpload = false;
    caller.on('data', (bytes) => {
      isUpload ||= sent === 0 && bytes.subarray(0, 4).toString() === 'PUT ';
      sent += bytes.length;
      // Cut after the head of the request and a part of its body. None of it is handed on: that a store keeps nothing of half
      // an upload is its own promise, and s3rver's process breaks over one.
      if (line.weather !== 'cut') store.write(bytes);
      else if (sent > 4000 || !isUpload) caller.destroy();
      if (line.weather === 'refused') caller.destroy();
    });
    store.on('data', (bytes) => {
      if (line.weather === 'fine') caller.write(bytes);
      else caller.destroy();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  line.port = typeof address === 'object' && address ? address.port : 0;
  line.stop = () => {
    server.close();
    for (const socket of open) socket.destroy();
  };
  return line;
}

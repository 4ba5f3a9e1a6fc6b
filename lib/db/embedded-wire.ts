import { createServer, type Server, type Socket } from 'node:net';
import type { PGlite } from '@electric-sql/pglite';

/**
 * Serves one PGlite over the PostgreSQL wire protocol. PGlite is a single session, so a connection owns it from its
 * first message until the database reports "ready, no transaction"; the others wait in order of arrival.
 * Written because pglite-socket 0.2.17 lets connections interleave between Parse and Bind: under ten busy connections
 * one answer in 2,000 belonged to another query.
 */
export class WireServer {
  private readonly server: Server;
  private readonly lines = new Set<Line>();
  private readonly waiting: Line[] = [];
  private owner: Line | undefined;
  private isBusy = false;

  constructor(private readonly database: PGlite) {
    this.server = createServer((socket) => this.accept(socket));
  }

  listen(socketPath: string): Promise<void> {
    return new Promise((resolve, reject) => {
      this.server.once('error', reject).listen(socketPath, resolve);
    });
  }

  /** Refuses new connections, ends the open ones, waits for the query in hand and undoes what was half done. */
  async stop(): Promise<void> {
    const closed = new Promise((resolve) => this.server.close(resolve));
    for (const line of this.lines) line.socket.destroy();
    await closed;
    while (this.lines.size > 0 || this.isBusy) await new Promise((resolve) => setTimeout(resolve, 5));
  }

  private accept(socket: Socket): void {
    const line: Line = {
      socket,
      received: Buffer.alloc(0),
      messages: [],
      hasStarted: false,
      isClosed: false,
    };
    this.lines.add(line);
    socket.setNoDelay(true);
    socket.on('data', (chunk) => {
      line.received = Buffer.concat([line.received, chunk]);
      takeMessages(line);
      if (line.messages.length > 0) this.enqueue(line);
    });
    socket.on('error', () => socket.destroy());
    socket.on('close', () => {
      line.isClosed = true;
      line.messages.length = 0;
      this.lines.delete(line);
      this.enqueue(line);
    });
  }

  private enqueue(line: Line): void {
    if (!this.waiting.includes(line)) this.waiting.push(line);
    void this.work();
  }

  private async work(): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    try {
      for (let line = this.next(); line; line = this.next()) await this.serve(line);
    } finally {
      this.isBusy = false;
    }
  }

  private next(): Line | undefined {
    const index = this.owner ? this.waiting.indexOf(this.owner) : 0;
    return index < 0 ? undefined : this.waiting.splice(index, 1)[0];
  }

  private async serve(line: Line): Promise<void> {
    if (line.isClosed) return this.release(line);
    for (let message = line.messages.shift(); message; message = line.messages.shift()) {
      const reply = await this.ask(message);
      this.owner = isIdle(reply) ? undefined : line;
      if (line.isClosed) return this.release(line);
      line.socket.write(reply);
      if (!this.owner && line.messages.length > 0) return void this.waiting.push(line);
    }
  }

  /** A client that went away in the middle of a query or transaction leaves nothing of it behind. */
  private async release(line: Line): Promise<void> {
    if (this.owner !== line) return;
    await this.ask(sync);
    await this.ask(rollback);
    this.owner = undefined;
  }

  private async ask(message: Uint8Array): Promise<Buffer> {
    const parts: Uint8Array[] = [];
    await this.database.execProtocolRawStream(message, {
      onRawData: (data) => void parts.push(Uint8Array.from(data)),
    });
    return Buffer.concat(parts);
  }
}

type Line = { socket: Socket; received: Buffer; messages: Buffer[]; hasStarted: boolean; isClosed: boolean };

const sync = Uint8Array.from([0x53, 0, 0, 0, 4]);
const rollback = Buffer.concat([Uint8Array.from([0x51, 0, 0, 0, 13]), Buffer.from('ROLLBACK\0')]);

// PostgreSQL documentation, "Message Formats": SSLRequest, GSSENCRequest and CancelRequest have a code, no type byte.
const sslRequest = 80877103;
const gssRequest = 80877104;
const cancelRequest = 80877102;

function takeMessages(line: Line): void {
  for (;;) {
    const { received } = line;
    if (received.length < 8 && !(line.hasStarted && received.length >= 5)) return;
    const length = line.hasStarted ? 1 + received.readInt32BE(1) : received.readInt32BE(0);
    if (received.length < length) return;
    const message = received.subarray(0, length);
    line.received = received.subarray(length);
    if (line.hasStarted) {
      if (message[0] === 0x58) line.socket.end();
      else line.messages.push(message);
      continue;
    }
    const code = message.readInt32BE(4);
    if (code === sslRequest || code === gssRequest) line.socket.write('N');
    else if (code === cancelRequest) line.socket.end();
    else {
      line.hasStarted = true;
      line.messages.push(message);
    }
  }
}

/** ReadyForQuery is `Z`, its length 5 and the status: I idle, T in a transaction, E in a failed one. */
function isIdle(reply: Buffer): boolean {
  const end = reply.subarray(-6);
  return end.length === 6 && end[0] === 0x5a && end.readInt32BE(1) === 5 && end[5] === 0x49;
}

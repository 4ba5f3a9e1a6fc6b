import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import { SMTPServer } from 'smtp-server';

/** What the mail server does to a message: takes it, or one of the ways in which mail servers fail. */
export type Habit = 'takes' | 'refuses-for-now' | 'refuses-for-good' | 'never-answers' | 'drops-after-data';

export type PostOffice = {
  url: string;
  port: number;
  /** how often each Message-ID was handed over in full, answered or not */
  received: Map<string, number>;
  habit: Habit;
  stop(): Promise<void>;
};

/** A mail server on this machine that counts messages by their Message-ID and fails when it is told to. */
export async function openPostOffice(o: { port?: number; habit?: Habit } = {}): Promise<PostOffice> {
  const received = new Map<string, number>();
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onRcptTo(_address, _session, answer) {
      if (office.habit === 'refuses-for-now') return answer(refusal(451, '4.3.0 try again'));
      if (office.habit === 'refuses-for-good') return answer(refusal(550, '5.1.1 no such box'));
      answer();
    },
    onData(stream, session, answer) {
      void text(stream).then((message) => {
        const id = /^message-id:\s*(<[^>]+>)/im.exec(message)?.[1] ?? '';
        received.set(id, (received.get(id) ?? 0) + 1);
        if (office.habit === 'never-answers') return;
        if (office.habit === 'drops-after-data') return cut(session.id);
        answer();
      }, answer);
    },
  });
  function cut(sessionId: string): void {
    for (const connection of server.connections) if (connection.id === sessionId) connection.close();
  }
  // Whoever is killed breaks off the connection; that is the subject here, not a failure.
  server.on('error', () => {});
  await new Promise<void>((resolve) => server.listen(o.port ?? 0, '127.0.0.1', resolve));
  const address = server.server.address() as AddressInfo;
  const office: PostOffice = {
    url: `smtp://127.0.0.1:${address.port}`,
    port: address.port,
    received,
    habit: o.habit ?? 'takes',
    stop: () => new Promise((resolve) => server.close(resolve)),
  };
  return office;
}

function refusal(responseCode: number, sentence: string): Error {
  return Object.assign(new Error(sentence), { responseCode });
}

import type { AddressInfo } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';

export type MailServer = { url: string; port: number; inbox: ParsedMail[]; stop(): Promise<void> };

type Habits = {
  port?: number;
  /** Milliseconds between the end of a message and the answer to it. */
  slowness?: number;
  onRcptTo?: SMTPServerOptions['onRcptTo'];
};

/** A real mail server on this machine that reads every message it takes. */
export async function startMailServer(habits: Habits = {}): Promise<MailServer> {
  const inbox: ParsedMail[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    ...(habits.onRcptTo && { onRcptTo: habits.onRcptTo }),
    onData(stream, _session, answer) {
      simpleParser(stream).then((mail) => {
        inbox.push(mail);
        setTimeout(answer, habits.slowness ?? 0);
      }, answer);
    },
  });
  // A client that is killed breaks off its connection; that is a test's subject, not its failure.
  server.on('error', () => {});
  await new Promise<void>((resolve) => server.listen(habits.port ?? 0, '127.0.0.1', resolve));
  const { port } = server.server.address() as AddressInfo;
  return {
    url: `smtp://127.0.0.1:${port}`,
    port,
    inbox,
    stop: () => new Promise((resolve) => server.close(resolve)),
  };
}

import { Tag, type TagTone } from '@/app/ui/page/tag';
import type { ListedMail } from '@/lib/mail/records';
import type { MailState } from '@/lib/mail/rules/standing';

export type MailStanding = MailState | 'bounced';

export const STATE_WORDS: Record<MailStanding, { label: string; meaning: string; tone: TagTone }> = {
  failed: { label: 'failed', meaning: 'Given up. Send it again once the reason is put right.', tone: 'stop' },
  kept: {
    label: 'kept here',
    meaning: 'There was no mail server to hand it to. Read it here, or send it again once there is one.',
    tone: 'warn',
  },
  queued: { label: 'waiting', meaning: 'Leaves within seconds, or at its next try.', tone: 'waiting' },
  sending: { label: 'leaving now', meaning: 'The mail server is being asked to take it.', tone: 'now' },
  bounced: {
    label: 'came back',
    meaning: 'It left, and the other mail server did not take it. Put the reason right, then send it again.',
    tone: 'stop',
  },
  sent: { label: 'sent', meaning: 'The mail server took it.', tone: 'good' },
};

/** Where a message stands, as one word with its mark. */
export function StateTag({ state }: { state: MailStanding }) {
  return <Tag tone={STATE_WORDS[state].tone}>{STATE_WORDS[state].label}</Tag>;
}

/** The state of a message as people see it: one that came back is no longer simply sent. */
export function standingOf(mail: Pick<ListedMail, 'state' | 'bouncedAt'>): MailStanding {
  return mail.bouncedAt ? 'bounced' : mail.state;
}

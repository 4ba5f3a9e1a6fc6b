import type { Route } from 'next';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import type { Today } from '@/lib/jobs/today';
import { may, type Role } from '@/lib/people/rules/roles';

type Shown = { mail: Today['mail']; role: Role };

/**
 * Mail that was given up cannot wait; mail that is kept, because no mail server is set, is one quiet line. Whoever has no hand in mail
 * is told of it, and who looks at it.
 */
export function MailToday({ mail, role }: Shown) {
  const mayOpen = may(role, 'mail');
  const troubles: { count: number; words: string; href: Route; label: string }[] = [
    {
      count: mail.failed,
      words:
        mail.failed === 1
          ? 'One message was given up after several tries.'
          : `${mail.failed} messages were given up after several tries.`,
      href: '/workshop/mail?state=failed',
      label: 'Look at the mail given up',
    },
    {
      count: mail.bounced,
      words: mail.bounced === 1 ? 'One message came back.' : `${mail.bounced} messages came back.`,
      href: '/workshop/mail?state=bounced',
      label: 'Look at the mail that came back',
    },
  ];
  const shown = troubles.filter(({ count }) => count > 0);
  return (
    <>
      {shown.length > 0 ? (
        <div id="mail" className="mt-6">
          <Notice kind="stop" heading="A customer has not been told">
            {shown.map(({ words, href, label }) => (
              <div key={href}>
                <p>{words}</p>
                {mayOpen ? (
                  <p>
                    <LinkButton href={href} kind="second">
                      {label}
                    </LinkButton>
                  </p>
                ) : null}
              </div>
            ))}
            {mayOpen ? null : (
              <p>
                The front desk or the owner looks at it under Mail. Where it is about a job, the job’s sheet
                says what went wrong.
              </p>
            )}
          </Notice>
        </div>
      ) : null}
      {mail.kept > 0 ? (
        <p className="mt-3 text-small">
          {mail.kept === 1 ? '1 message is' : `${mail.kept} messages are`} kept here, because no mail server
          is set.
          {mayOpen ? (
            <>
              {' '}
              <TextLink href="/workshop/mail?state=kept">Read or send them</TextLink>
            </>
          ) : null}
        </p>
      ) : null}
    </>
  );
}

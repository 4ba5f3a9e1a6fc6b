import type { Metadata } from 'next';
import { LostPage } from './ui/frame/lost-page';
import { LinkButton } from './ui/page/button';

export const metadata: Metadata = { title: 'Nothing at this address' };

export default function NotFound() {
  return (
    <LostPage title="Nothing at this address">
      <p>
        The address may be cut short. Links in our e-mails are long; copy the whole line, or open the e-mail
        again and tap the link there.
      </p>
      <p>If you have a number from your packing slip or certificate, you can look it up instead.</p>
      <p className="page-actions">
        <LinkButton href="/track">Look up a number</LinkButton>
        <LinkButton href="/" kind="quiet">
          Go to the front page
        </LinkButton>
      </p>
    </LostPage>
  );
}

import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import type { WorkshopCard } from '@/lib/workshop/card';
import { missingSettings, type Stopped } from '@/lib/workshop/rules/missing-settings';

const HEADINGS: Record<Stopped, string> = {
  booking: 'No job can be opened yet',
  certificate: 'No certificate can be issued yet',
};

type Props = { workshop: WorkshopCard; mayFillIn: boolean; stopped?: Stopped };

/** What of the settings is missing, why it matters and who fills it in; nothing once all is there. */
export function MissingNotice({ workshop, mayFillIn, stopped }: Props) {
  const missing = missingSettings(workshop, stopped);
  const [first] = missing;
  if (!first) return null;
  return (
    <Notice kind="warn" heading={stopped ? HEADINGS[stopped] : 'Not filled in yet'}>
      <ul>
        {missing.map(({ key, words, why }) => (
          <li key={key}>
            <strong>{sentence(words)}</strong> {why}
          </li>
        ))}
      </ul>
      <p>
        {mayFillIn ? (
          <TextLink href={first.href}>Fill in the details</TextLink>
        ) : (
          'Only the owner can fill this in, under Settings, Details. Tell them.'
        )}
      </p>
    </Notice>
  );
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

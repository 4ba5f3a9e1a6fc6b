import { JobPage, Next, Title, Words } from './frame';
import type { Writer } from './letter';
import { thing } from './words';

const MEANWHILE = {
  job: 'The job goes on as agreed in the meantime.',
  quote: 'The price stays as it is in the meantime.',
} as const;

export const messageFromWorkshop: Writer<'message-from-workshop'> = ({ text, goesOn }, setting) => ({
  to: 'customer',
  subject: `A message about ${thing(setting)} ${setting.job.number}`,
  summary: firstWords(text),
  body: (
    <>
      <Title>A message from the workshop</Title>
      <Words from={setting.workshop.name}>{text}</Words>
      <JobPage setting={setting}>{`Read and answer on the ${thing(setting)} page`}</JobPage>
      <Next
        what={`If the message asks you something, answer on the ${thing(setting)} page.${goesOn ? ` ${MEANWHILE[thing(setting)]}` : ''}`}
        when="When it suits you."
        costs="A message changes no price. If a price has to change, we ask for your yes or no."
      />
    </>
  ),
});

function firstWords(text: string): string {
  const line = text.trim().replace(/\s+/g, ' ');
  return line.length <= 90 ? line : `${line.slice(0, 89).trimEnd()}…`;
}

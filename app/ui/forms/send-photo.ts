import { PHOTO_ADDRESS } from '@/lib/gate/rules/photo-address';

/** What became of a photo sent ahead: the slip to send with the form, or a sentence. */
export type SentPhoto = { kept: string; problem?: never } | { kept?: never; problem: string };

const LOST = 'It did not get through. It is sent with the form.';

/** Sends one photo and tells how far it is, from 0 to 1. Not fetch: no browser tells how much of its body has left. */
export function sendPhoto(file: File, tell: (share: number) => void): Promise<SentPhoto> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open(
      'PUT',
      `${PHOTO_ADDRESS}?name=${encodeURIComponent(file.name.replace(/\p{Surrogate}/gu, ''))}`,
    );
    request.responseType = 'json';
    request.upload.onprogress = ({ loaded, total }) => tell(total > 0 ? Math.min(0.99, loaded / total) : 0);
    request.onload = () => resolve(readAnswer(request.response));
    request.onerror = () => resolve({ problem: LOST });
    request.ontimeout = () => resolve({ problem: LOST });
    request.timeout = 300_000;
    request.send(file);
  });
}

function readAnswer(answer: unknown): SentPhoto {
  if (typeof answer !== 'object' || answer === null) return { problem: LOST };
  if ('kept' in answer && typeof answer.kept === 'string') return { kept: answer.kept };
  if ('problem' in answer && typeof answer.problem === 'string') return { problem: answer.problem };
  return { problem: LOST };
}

'use client';
import { useEffect, useId, useRef, useState } from 'react';
import { makeCodeReader, openCamera } from './scan-camera';

type Props = { onRead: (text: string) => void; onClose: () => void };

/** Time between two looks; a code is read while the hand still moves, and the phone stays cool (tried, no source). */
const PAUSE_MILLISECONDS = 150;

/** The camera's picture until a code is read or the person closes it; then the camera is off again. */
export function ScanDialog({ onRead, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const video = useRef<HTMLVideoElement>(null);
  const handlers = useRef({ onRead });
  const [problem, setProblem] = useState('');
  const id = useId();
  handlers.current = { onRead };

  useEffect(() => {
    dialog.current?.showModal();
    let isOver = false;
    let stream: MediaStream | undefined;
    const watch = async (screen: HTMLVideoElement) => {
      stream = await openCamera();
      // Closed while the browser asked for permission.
      if (isOver) return stopCamera(stream);
      screen.srcObject = stream;
      await screen.play();
      const read = await makeCodeReader();
      while (!isOver) {
        const text = screen.videoWidth > 0 ? await read(screen) : null;
        if (text !== null && !isOver) return handlers.current.onRead(text);
        await new Promise((resolve) => setTimeout(resolve, PAUSE_MILLISECONDS));
      }
    };
    if (video.current) {
      watch(video.current).catch((error: unknown) => {
        if (!isOver) setProblem(problemSentence(error));
      });
    }
    return () => {
      isOver = true;
      if (stream) stopCamera(stream);
    };
  }, []);

  return (
    <dialog ref={dialog} className="scan" aria-labelledby={id} onClose={onClose}>
      <p id={id} className="scan-head">
        Hold the code before the camera
      </p>
      {problem === '' ? (
        <video ref={video} className="scan-picture" muted playsInline aria-label="Picture of the camera" />
      ) : (
        <p role="alert">{problem}</p>
      )}
      <p className="field-hint">The picture stays on this device. Nothing of it is kept or sent.</p>
      <button type="button" className="button button-second" onClick={() => dialog.current?.close()}>
        Close the camera
      </button>
    </dialog>
  );
}

function stopCamera(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

function problemSentence(error: unknown): string {
  return error instanceof DOMException && error.name === 'NotAllowedError'
    ? 'The browser may not use the camera here. You can allow it in the browser, or type the characters.'
    : 'The camera did not start. Please type the characters.';
}

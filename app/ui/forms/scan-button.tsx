'use client';
import { type ReactNode, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { hasCamera } from './scan-camera';
import { ScanDialog } from './scan-dialog';

type Props = {
  /** id of the field that takes what was read */
  fieldId: string;
  /** what the field is for; heard, not seen, since a page may have two such buttons */
  what?: ReactNode;
  /** sends the form at once, for a field that is the form's only one, as a scanner at the bench does */
  sends?: boolean | undefined;
};

/**
 * Beside a number or a serial: reads it from a code with the device's camera. Without script, without a camera and on a
 * page that is not private to the browser it does not appear, and the field is typed into as ever.
 *
 * ```tsx
 * <ScanButton fieldId="number-number" what="Certificate number" sends />
 * ```
 */
export function ScanButton({ fieldId, what, sends }: Props) {
  const [isThere, setIsThere] = useState(false);
  const [isOpen, setIsOpen] = useState(false);
  const [told, setTold] = useState('');

  useEffect(() => {
    let isGone = false;
    hasCamera().then((found) => {
      if (!isGone) setIsThere(found);
    });
    return () => {
      isGone = true;
    };
  }, []);

  if (!isThere) return null;
  const take = (text: string) => {
    // While the dialog is open nothing else can take the focus.
    flushSync(() => setIsOpen(false));
    const field = document.getElementById(fieldId);
    if (!(field instanceof HTMLInputElement)) return;
    const fitting = field.maxLength > 0 ? text.trim().slice(0, field.maxLength) : text.trim();
    field.value = fitting;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    field.focus();
    if (sends) field.form?.requestSubmit();
    else setTold('Read. Please compare it with the label.');
  };
  return (
    <div className="scan-line">
      <button type="button" className="button button-second" onClick={() => setIsOpen(true)}>
        Scan with the camera
        {what ? <span className="sr-only">: {what}</span> : null}
      </button>
      <p role="status" className="field-hint">
        {told}
      </p>
      {isOpen ? <ScanDialog onRead={take} onClose={() => setIsOpen(false)} /> : null}
    </div>
  );
}

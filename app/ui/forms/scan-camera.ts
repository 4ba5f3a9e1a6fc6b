type Detector = { detect: (source: HTMLVideoElement) => Promise<{ rawValue: string }[]> };
type DetectorClass = {
  new (o: { formats: string[] }): Detector;
  getSupportedFormats: () => Promise<string[]>;
};

declare global {
  interface Window {
    /** W3C Shape Detection API; where the browser has none, a library reads the codes. */
    BarcodeDetector?: DetectorClass;
  }
}

/** Reads the code before the camera, or null where it sees none just now. */
export type CodeReader = (video: HTMLVideoElement) => Promise<string | null>;

const FORMATS = ['qr_code', 'data_matrix', 'code_128', 'code_39'];
/** Wide enough for the bars of a serial held at arm's length, small enough for an old phone (tried, no source). */
const WIDEST = 960;

/** True when this device lets a page ask for a camera; the person is not asked for anything yet. */
export async function hasCamera(): Promise<boolean> {
  // Absent on plain http, except on the machine itself.
  const devices = window.isSecureContext ? navigator.mediaDevices : undefined;
  if (!devices?.getUserMedia) return false;
  return (await devices.enumerateDevices().catch(() => [])).some((each) => each.kind === 'videoinput');
}

/** Opens the camera at the back of a phone, or the only one there is. Rejects when it may not or cannot. */
export function openCamera(): Promise<MediaStream> {
  return navigator.mediaDevices.getUserMedia({
    audio: false,
    video: { facingMode: 'environment', width: { ideal: 1280 } },
  });
}

/** The browser's own reader of codes where it has one that knows bars and squares; else a library, loaded only now. */
export async function makeCodeReader(): Promise<CodeReader> {
  return (await ownReader()) ?? libraryReader();
}

async function ownReader(): Promise<CodeReader | null> {
  const { BarcodeDetector } = window;
  if (!BarcodeDetector) return null;
  const known = await BarcodeDetector.getSupportedFormats().catch((): string[] => []);
  const formats = FORMATS.filter((format) => known.includes(format));
  if (!formats.includes('qr_code') || !formats.includes('code_128')) return null;
  const detector = new BarcodeDetector({ formats });
  return async (video) => (await detector.detect(video))[0]?.rawValue ?? null;
}

async function libraryReader(): Promise<CodeReader> {
  const { readCode } = await import('./scan-pixels');
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('this browser draws no pictures');
  return async (video) => {
    const scale = Math.min(1, WIDEST / video.videoWidth);
    canvas.width = Math.round(video.videoWidth * scale);
    canvas.height = Math.round(video.videoHeight * scale);
    context.drawImage(video, 0, 0, canvas.width, canvas.height);
    return readCode(context.getImageData(0, 0, canvas.width, canvas.height));
  };
}
